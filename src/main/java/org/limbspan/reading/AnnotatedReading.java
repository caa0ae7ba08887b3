package org.limbspan.reading;

import java.util.List;
import java.util.Optional;
import org.limbspan.rig.Predicted;

/**
 * A reading with all that is derived from it when it is looked at.
 *
 * @param setup number of its setup
 * @param standardised empty as long as its setup has no calibration
 * @param remarks what its observer should know, in words
 */
record AnnotatedReading(
    RecordedReading reading,
    int setup,
    Predicted predicted,
    Optional<StandardisedReading> standardised,
    List<String> remarks) {}
