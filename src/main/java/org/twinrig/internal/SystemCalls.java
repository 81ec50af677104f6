package org.twinrig.internal;

import com.sun.jna.Function;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalInt;

/**
 * Calls of the system that Java has no method for. Every one answers whether it was done; where the
 * system, its library or the file system lacks it, it was not, and nothing has changed. The library
 * that makes the calls is loaded with this class, at the first call.
 */
final class SystemCalls {
  /** Of renameat2(2) on Linux and renamex_np(2) on macOS; both are 2. */
  private static final int EXCHANGE = 2;

  /** The current folder, in the place of an open one (Linux, fcntl.h). */
  private static final int AT_FDCWD = -100;

  private SystemCalls() {}

  /** Exchanges what two names stand for, at once. */
  static boolean exchange(Path one, Path other) {
    if (Platform.isMac()) {
      return call("renamex_np", name(one), name(other), EXCHANGE).orElse(-1) == 0;
    }
    return Platform.isLinux()
        && call("renameat2", AT_FDCWD, name(one), AT_FDCWD, name(other), EXCHANGE).orElse(-1) == 0;
  }

  /** Forces everything of the file system a folder lies on to the disk: syncfs(2) of Linux. */
  static boolean syncFileSystem(Path folder) {
    if (!Platform.isLinux()) {
      return false;
    }
    int opened = call("open", name(folder), 0).orElse(-1);
    if (opened < 0) {
      return false;
    }
    boolean done = call("syncfs", opened).orElse(-1) == 0;
    call("close", opened);
    return done;
  }

  private static OptionalInt call(String function, Object... arguments) {
    // A name that the system's encoding cannot write would stand for another file.
    if (Arrays.asList(arguments).contains(null)) {
      return OptionalInt.empty();
    }
    try {
      Function found = NativeLibrary.getInstance("c").getFunction(function);
      return OptionalInt.of(found.invokeInt(arguments));
    } catch (LinkageError e) {
      return OptionalInt.empty(); // an older system has no such call
    }
  }

  /** As bytes that end in a zero, in the encoding Java names files in; null where it cannot. */
  private static byte[] name(Path path) {
    Charset encoding = Charset.forName(System.getProperty("sun.jnu.encoding", "UTF-8"));
    String text = path.toAbsolutePath() + "\0";
    byte[] bytes = text.getBytes(encoding);
    return new String(bytes, encoding).equals(text) ? bytes : null;
  }
}
