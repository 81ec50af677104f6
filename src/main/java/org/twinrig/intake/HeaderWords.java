package org.twinrig.intake;

import java.text.Normalizer;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a column's title means, in the languages instruments and spreadsheets are set to. */
record HeaderWords(Set<String> words, boolean bracket) {
  /** What a column holds, as far as its title says. */
  enum Role {
    FREQUENCY,
    LEVEL,
    /** A pressure, voltage or ratio: something that is no level in dB. */
    LINEAR,
    PHASE,
    /** A quantity that is none of these, even in dB or Hz. */
    OTHER,
    UNKNOWN
  }

  // Words are lower case, without accents; letters only.
  private static final Set<String> FREQUENCY =
      NumberText.words(
          """
          frequency frequencies freq frq frequenz frequenzen frequence frequences frecuencia
          frequenza frequencia frequentie frekvens frekvence frekvencia frekans taajuus
          czestotliwosc частота 周波数 频率 頻率
          """);
  private static final Set<String> LEVEL =
      NumberText.words(
          """
          level levels spl magnitude mag amplitude ampl gain response pegel schalldruckpegel
          frequenzgang betrag niveau amplitud nivel magnitud livello ampiezza modulo module niva
          niveauet taso poziom uroven уровень 音圧 レベル 音圧レベル 声压级 聲壓級
          """);
  private static final Set<String> PHASE =
      NumberText.words(
          """
          phase phas phi fase faza faasi vaihe deg degree degrees degre degres grad grados gradi
          graus graden grader winkel angle rad radians фаза 位相 相位
          """);
  private static final Set<String> PHASE_UNIT = NumberText.words("deg degree degrees grad rad");
  private static final Set<String> LINEAR_UNIT =
      NumberText.words(
          """
          pa mpa upa µpa μpa pascal pascals v mv uv µv μv volt volts vrms mvrms linear percent
          prozent
          """);
  private static final Set<String> LINEAR =
      NumberText.words(
          """
          pressure schalldruck pression presion voltage spannung ratio
          """);
  private static final Set<String> OTHER =
      NumberText.words(
          """
          thd distortion klirr klirrfaktor harmonic noise rauschen coherence koharenz delay
          impedance impedanz ohm ohms uncertainty unsicherheit deviation std sd tolerance limit
          time date zeit datum temperature
          """);

  private static final Pattern WORD = Pattern.compile("\\p{L}+|[°%]");

  static HeaderWords of(String title) {
    String lower = title.toLowerCase(Locale.ROOT);
    boolean ascii = lower.chars().allMatch(c -> c < 0x80);
    Set<String> words = new HashSet<>();
    Matcher each = WORD.matcher(ascii ? lower : withoutAccents(lower));
    while (each.find()) {
      words.add(each.group().replace("°", "degree").replace("%", "percent"));
    }
    return new HeaderWords(words, title.chars().anyMatch(c -> "([/".indexOf(c) >= 0));
  }

  private static String withoutAccents(String text) {
    String parted = Normalizer.normalize(text, Normalizer.Form.NFD);
    // Accents only: the marks of other scripts, as in the last sign of a Japanese level, stay.
    String bare = parted.replaceAll("[\\u0300-\\u036f]", "");
    return Normalizer.normalize(bare, Normalizer.Form.NFC);
  }

  Role role() {
    if (hasAny(OTHER) || isOnly("no") || isOnly("nr") || isOnly("index")) {
      return Role.OTHER;
    }
    if (saysDb()) {
      return Role.LEVEL;
    }
    if (hasAny(PHASE)) {
      return Role.PHASE;
    }
    // A "frequency response" is a level unless its unit is the hertz.
    boolean hertz = saysHz() || saysKhz();
    if (hertz || isOnly("f") || (hasAny(FREQUENCY) && !hasAny(LEVEL))) {
      return Role.FREQUENCY;
    }
    return linearOrLevel();
  }

  private Role linearOrLevel() {
    boolean level = hasAny(LEVEL);
    // "Level re 20 µPa" names a reference, not a unit.
    boolean reference = level && words.contains("re");
    boolean unit = hasAny(LINEAR_UNIT) && (bracket || level || words.size() == 1) && !reference;
    if (unit || (hasAny(LINEAR) && !level)) {
      return Role.LINEAR;
    }
    return level ? Role.LEVEL : Role.UNKNOWN;
  }

  boolean saysHz() {
    return words.contains("hz") || words.contains("hertz") || words.contains("гц");
  }

  boolean saysKhz() {
    return words.contains("khz") || words.contains("kilohertz") || words.contains("кгц");
  }

  /** dB, dB(A), dBSPL, dBV, decibel… */
  boolean saysDb() {
    return words.stream()
        .anyMatch(
            w ->
                (w.startsWith("db") && w.length() <= 6)
                    || w.startsWith("dezibel")
                    || w.startsWith("decibel")
                    || w.equals("дб"));
  }

  /** Whether a title is nothing but a unit, as the second line of a header has it. */
  boolean isUnit() {
    // "dB SPL" and "dB(A)" are two words.
    return words.size() <= (saysDb() ? 2 : 1)
        && (saysHz() || saysKhz() || saysDb() || hasAny(PHASE_UNIT) || hasAny(LINEAR_UNIT));
  }

  private boolean isOnly(String word) {
    return words.size() == 1 && words.contains(word);
  }

  private boolean hasAny(Set<String> meaning) {
    return words.stream().anyMatch(meaning::contains);
  }
}
