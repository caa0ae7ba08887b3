package org.limbspan.cycle;

/**
 * What a level and a coefficient leave of the squares of each night, in units of the stated noise:
 * squares - 2 level (with ones) + level^2 ones + the same of the column, twice their product.
 */
final class NightForms {

  final int[] sizes;
  final int[] levelOfNight;
  final double[] ones;
  final double[] withOnes;
  final double[] squares;
  final double[] columnSquares;
  final double[] columnWithOnes;
  final double[] withColumn;

  /** The arrays are not copied; those of the column are zeros where there is none. */
  NightForms(
      int[] sizes,
      int[] levelOfNight,
      double[] ones,
      double[] withOnes,
      double[] squares,
      double[] columnSquares,
      double[] columnWithOnes,
      double[] withColumn) {
    this.sizes = sizes;
    this.levelOfNight = levelOfNight;
    this.ones = ones;
    this.withOnes = withOnes;
    this.squares = squares;
    this.columnSquares = columnSquares;
    this.columnWithOnes = columnWithOnes;
    this.withColumn = withColumn;
  }

  int count() {
    return sizes.length;
  }

  double misfit(int night, double level, double coefficient) {
    double left =
        squares[night]
            + level * (level * ones[night] - 2 * withOnes[night])
            + coefficient
                * (coefficient * columnSquares[night]
                    + 2 * (level * columnWithOnes[night] - withColumn[night]));
    return Math.max(0, left);
  }

  /** Derivative of {@link #misfit} by the level. */
  double byLevel(int night, double level, double coefficient) {
    return 2 * (level * ones[night] - withOnes[night] + coefficient * columnWithOnes[night]);
  }

  /** Derivative of {@link #misfit} by the coefficient. */
  double byCoefficient(int night, double level, double coefficient) {
    return 2
        * (coefficient * columnSquares[night] + level * columnWithOnes[night] - withColumn[night]);
  }
}
