package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;
import org.twinrig.study.Settings;
import org.twinrig.translation.CatalogueEntry.Averaging;

/** What a lab is told of a row that contradicts itself. */
class CatalogueReaderTest {
  @TempDir private Path folder;

  private List<String> problems(String row) throws IOException, UnusableInput {
    return texts(read("form,reference", row));
  }

  private Findings<CatalogueReader.Catalogue> read(String columns, String... rows)
      throws IOException, UnusableInput {
    Path table =
        Files.writeString(
            folder.resolve("catalogue.csv"),
            "graph,unit,kind,file," + columns + "\n" + String.join("\n", rows) + "\n");
    return CatalogueReader.read(table, "catalogue.csv");
  }

  private static List<String> texts(Findings<?> read) {
    return read.problems().stream().map(Problem::text).toList();
  }

  @Test
  void aStateMakesAKindOfItsOwn() throws Exception {
    assertEquals(
        List.of("in-ear", "in-ear", "in-ear, ANC on", "in-ear, adaptive", "unknown, adaptive"),
        read(
                "state",
                "a,Oak 5,in-ear,oak.txt,",
                "b,Oak 5,in-ear,oak.txt,passive",
                "c,Oak 5,in-ear,oak.txt,ANC on",
                "d,Oak 5,in-ear,oak.txt,adaptive",
                "e,Oak 5,unknown,oak.txt,adaptive")
            .value()
            .entries()
            .stream()
            .map(CatalogueEntry::kind)
            .toList());
    assertEquals(
        List.of(
            "catalogue.csv:2: `state` is `anc`; write `passive`, `ANC on`, `ANC off`, `wireless` or"
                + " `adaptive`",
            "catalogue.csv:3: `state` is `ANC on`, and `kind` is `unknown`; name the kind, because a"
                + " graph of unknown kind is held against passive units only"),
        texts(read("state", "a,Oak 5,in-ear,oak.txt,anc", "b,Oak 5,unknown,oak.txt,ANC on")));
  }

  @Test
  void averagingIsOneOfThreeWords() throws Exception {
    Findings<CatalogueReader.Catalogue> read =
        read(
            "averaging,seatings",
            "a,Oak 5,in-ear,oak.txt,,3",
            "b,Oak 5,in-ear,oak.txt,power,3",
            "c,Oak 5,in-ear,oak.txt,best seal,",
            "d,Oak 5,in-ear,oak.txt,power,",
            "e,Oak 5,in-ear,oak.txt,power,",
            "f,Oak 5,in-ear,oak.txt,mean,");
    assertEquals(
        List.of(
            Averaging.DB, Averaging.POWER, Averaging.BEST_SEAL, Averaging.POWER, Averaging.POWER),
        read.value().entries().stream().map(e -> e.averaged().how()).toList());
    assertEquals(
        List.of("catalogue.csv:7: `averaging` is `mean`; write `db`, `power` or `best seal`"),
        texts(read));
    Translation none = SmallStudy.of(5, 1, Settings.defaults()).translation();
    assertEquals(
        List.of(
            "catalogue.csv:5: 2 graphs average powers and leave `seatings` empty: they read higher"
                + " than a mean of decibels by nobody knows how much, and nothing is taken off; write"
                + " how many seatings were averaged"),
        CatalogueNames.notes(read.value(), List.of(none)).stream().map(Problem::text).toList());
  }

  @Test
  void aSmoothingSaysWhatWasAveraged() throws Exception {
    Findings<CatalogueReader.Catalogue> read =
        read(
            "smoothing,reference_smoothing,form",
            "a,Oak 5,in-ear,oak.txt,1/6 db,1/3 db,compensated",
            "b,Oak 5,in-ear,oak.txt,1/6 power,,",
            "c,Oak 5,in-ear,oak.txt,1/6 mean,,");
    assertEquals(
        List.of(new Smoothing(6, Smoothing.Domain.DB), new Smoothing(6)),
        read.value().entries().stream().map(CatalogueEntry::statedSmoothing).toList());
    assertEquals(
        Optional.of(new Smoothing(3, Smoothing.Domain.DB)),
        read.value().entries().get(0).subtracted().orElseThrow().smoothing());
    assertEquals(
        List.of(
            "catalogue.csv:4: `smoothing` is `1/6 mean`; write `none`, or a part of an octave from"
                + " `1/1` to `1/48`, with ` db` behind it where decibels were averaged and not"
                + " powers: `1/6 db`"),
        texts(read));
  }

  @Test
  void aRawGraphHasNoReference() throws Exception {
    assertEquals(
        List.of(
            "catalogue.csv:2: a raw graph names a `reference`; write `compensated` under `form` when"
                + " the curve was subtracted, or leave `reference` empty"),
        problems("g,Oak 5,in-ear,oak.txt,raw,curve.txt"));
    assertEquals(List.of(), problems("g,Oak 5,in-ear,oak.txt,compensated,curve.txt"));
  }

  @Test
  void aFormThatIsNoKnownWordIsAllThatIsSaid() throws Exception {
    assertEquals(
        List.of("catalogue.csv:2: `form` is `kompensiert`; write `raw` or `compensated`"),
        problems("g,Oak 5,in-ear,oak.txt,kompensiert,curve.txt"));
  }
}
