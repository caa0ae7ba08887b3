package org.limbspan.drift;

/**
 * Where new explanations branch off.
 *
 * @param track what is supposed so far
 * @param fact the next fact, which no track has taken yet
 * @param index its index
 * @param into where the new tracks go
 */
record Branching(Track track, Fact fact, int index, Generation into) {

  /**
   * Branches off one explanation, which the caller then gives its meaning.
   *
   * @param family explanations of one family differ only in their onset
   * @param logPrior ln of its probability before anything is seen of it
   */
  Track off(Change change, Cause cause, String family, double logPrior) {
    return off(change, cause, family, logPrior, track.hypothesis.lens());
  }

  /** The same, with the readings taken in another way. */
  Track off(Change change, Cause cause, String family, double logPrior, Lens lens) {
    Hypothesis next = new Hypothesis(change, cause, index, fact.day, family, lens);
    Track child = track.child(next, logPrior);
    into.add(child);
    return child;
  }

  /**
   * ln of the probability that something with that daily rate happened since the fact before; or,
   * at the first reading, that it was so from the start.
   */
  double logHazard(double perDay, double fromTheStart) {
    return track.readings() == 0 ? Math.log(fromTheStart) : logHazard(perDay);
  }

  /** ln of the probability that something with that daily rate happened since the fact before. */
  double logHazard(double perDay) {
    return Math.log(-Math.expm1(-perDay * (fact.gapDays + Priors.VISIT_DAYS)));
  }
}
