#!/bin/sh
# Runs the notebooks in Jupyter with a Java kernel, or installs that kernel.
#
#   notebooks-java/jupyter.sh            runs all notebooks and says which failed; the files stay as they are
#   notebooks-java/jupyter.sh install    installs the kernel for you, with this checkout's jar on its class path
#
# Needs JDK 17, Maven, and Jupyter with nbconvert (Debian: jupyter-client jupyter-nbconvert).
set -eu

home=$(cd "$(dirname "$0")/.." && pwd)
kernel_version=3.0.1
kernel_jar="$home/target/jupyter/rapaio-jupyter-kernel-$kernel_version.jar"

cd "$home"
[ -f target/twinrig.jar ] || mvn -q -B -Plauncher package
[ -f "$kernel_jar" ] || mvn -q -B org.apache.maven.plugins:maven-dependency-plugin:3.8.1:copy \
    "-Dartifact=io.github.padreati:rapaio-jupyter-kernel:$kernel_version" \
    "-DoutputDirectory=$home/target/jupyter"

write_kernel() {
  mkdir -p "$1/kernels/java"
  cat > "$1/kernels/java/kernel.json" <<END
{
  "argv": ["java", "-Djava.awt.headless=true", "--add-opens", "jdk.jshell/jdk.jshell=ALL-UNNAMED",
    "-cp", "$kernel_jar:$home/target/twinrig.jar",
    "org.rapaio.jupyter.kernel.MainApp", "{connection_file}"],
  "display_name": "Java",
  "language": "java",
  "interrupt_mode": "message"
}
END
}

if [ "${1:-}" = install ]; then
  place=$(jupyter --data-dir)
  write_kernel "$place"
  echo "Installed the kernel \"Java\" in $place/kernels/java"
  exit 0
fi

write_kernel target/jupyter
JUPYTER_PATH="$home/target/jupyter"
export JUPYTER_PATH
# A kernel now and then does not answer when it starts: it is tried three times.
run() {
  for attempt in 1 2 3; do
    if jupyter nbconvert --log-level ERROR --to html --execute \
        --ExecutePreprocessor.startup_timeout=60 --output-dir target/jupyter/run "$1" \
        > target/jupyter/run.log 2>&1; then
      return 0
    fi
    grep -q "Kernel didn't respond" target/jupyter/run.log || return 1
  done
  return 1
}

failed=0
for notebook in notebooks-java/*.ipynb; do
  if run "$notebook"; then
    echo "ran      $notebook"
  else
    echo "FAILED   $notebook"
    cat target/jupyter/run.log
    failed=1
  fi
done
exit $failed
