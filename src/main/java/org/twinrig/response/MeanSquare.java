package org.twinrig.response;

/**
 * The mean-square level of a response over a stretch of the frequency axis, per unit of log
 * frequency.
 *
 * <p>{@code L = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} from {@code u1} to {@code
 * u2}, where {@code L(u)} in dB is the response, piecewise linear in {@code u}. Each piece is
 * integrated in closed form: a piece from level {@code L0} to {@code L1} over {@code Δu}
 * contributes {@code Δu·10^(L0/10)·(e^z - 1)/z} with {@code z = (L1-L0)·ln(10)/10}.
 */
final class MeanSquare {
  private static final double NEPERS_PER_DB = Math.log(10) / 10;

  private MeanSquare() {}

  /**
   * The level over a stretch that lies inside the response.
   *
   * @param lowerHz lower end, on the piece that starts at {@code firstPiece}
   * @param upperHz upper end, above {@code lowerHz}
   * @param firstPiece the point the piece of the lower end starts at
   */
  static double levelDb(Response response, double lowerHz, double upperHz, int firstPiece) {
    // Powers are taken relative to the level at the lower end, so that no level can overflow.
    double reference = response.between(firstPiece, lowerHz);
    double leftHz = lowerHz;
    double leftDb = reference;
    double integral = 0;
    for (int piece = firstPiece; leftHz < upperHz; piece++) {
      double endHz = response.frequencyHz(piece + 1);
      double rightHz = Math.min(endHz, upperHz);
      double rightDb =
          endHz <= upperHz ? response.levelDb(piece + 1) : response.between(piece, rightHz);
      double power = Math.exp(NEPERS_PER_DB * (leftDb - reference));
      double z = NEPERS_PER_DB * (rightDb - leftDb);
      integral += Math.log(rightHz / leftHz) * power * (z == 0 ? 1 : Math.expm1(z) / z);
      leftHz = rightHz;
      leftDb = rightDb;
    }
    return reference + Math.log(integral / Math.log(upperHz / lowerHz)) / NEPERS_PER_DB;
  }
}
