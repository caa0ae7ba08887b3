package org.limbspan.cycle;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Which rows belong together: a number from 0 for each row. */
final class Grouping {

  private final int[] ids;
  private final int count;

  private Grouping(int[] ids, int count) {
    this.ids = ids;
    this.count = count;
  }

  /** Rows of equal keys belong together. */
  static Grouping by(List<?> keys) {
    return after(List.of(), keys);
  }

  /**
   * Rows of equal keys belong together, and those of a known key to its group.
   *
   * @param known keys of the groups from 0 on
   */
  static Grouping after(List<?> known, List<?> keys) {
    Map<Object, Integer> seen = new HashMap<>();
    known.forEach(key -> seen.put(key, seen.size()));
    int[] ids = new int[keys.size()];
    for (int i = 0; i < ids.length; i++) {
      Integer id = seen.putIfAbsent(keys.get(i), seen.size());
      ids[i] = id == null ? seen.size() - 1 : id;
    }
    return new Grouping(ids, seen.size());
  }

  /**
   * Groups that are numbered already.
   *
   * @param ids of each row, from 0 to below {@code count}
   */
  static Grouping of(int[] ids, int count) {
    return new Grouping(ids.clone(), count);
  }

  int of(int row) {
    return ids[row];
  }

  int count() {
    return count;
  }

  /** How many rows each group has. */
  int[] sizes() {
    int[] sizes = new int[count];
    for (int id : ids) {
      sizes[id]++;
    }
    return sizes;
  }

  /** Sums of {@code values} over each group. */
  double[] sums(double[] values) {
    double[] sums = new double[count];
    for (int i = 0; i < ids.length; i++) {
      sums[ids[i]] += values[i];
    }
    return sums;
  }

  /** Medians of {@code values} over each group; NaN of none. */
  double[] medians(double[] values) {
    int[] size = sizes();
    double[][] members = new double[count][];
    for (int g = 0; g < count; g++) {
      members[g] = new double[size[g]];
    }
    for (int i = 0; i < ids.length; i++) {
      members[ids[i]][--size[ids[i]]] = values[i];
    }
    double[] medians = new double[count];
    for (int g = 0; g < count; g++) {
      medians[g] = median(members[g]);
    }
    return medians;
  }

  /** By sorting: most groups are nights, and small. */
  private static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    Arrays.sort(values);
    int middle = values.length / 2;
    return values.length % 2 == 1
        ? values[middle]
        : values[middle - 1] + (values[middle] - values[middle - 1]) / 2;
  }
}
