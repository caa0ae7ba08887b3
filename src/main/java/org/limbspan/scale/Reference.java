package org.limbspan.scale;

import java.util.List;

/** Something of known angular size, to be measured in an image. */
public sealed interface Reference permits Target, StarPair {

  /** The angle it spans, in arcseconds. */
  double angleArcsec();

  /** What is uncertain about the angle. */
  List<SharedError> sharedErrors();
}
