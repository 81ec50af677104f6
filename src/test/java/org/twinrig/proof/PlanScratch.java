package org.twinrig.proof;

public class PlanScratch {
  public static void main(String[] a) {
    PlanTrials t =
        PlanTrials.standard(Integer.parseInt(a[0]), Long.parseLong(a[1]))
            .withTolerance(Double.parseDouble(a[2]));
    long s = System.nanoTime();
    for (PlanProofRow r : PlanProof.run(t, 2, d -> {})) System.out.println(r);
    System.out.println((System.nanoTime() - s) / 1e9);
  }
}
