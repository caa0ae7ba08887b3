package org.limbspan.rig;

import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Site;

/**
 * A rig to be entered.
 *
 * @param slug its name in addresses: 1 to 40 of a-z, 0-9 and '-'
 */
public record NewRig(String slug, String name, Site site, ZoneId timeZone, @Nullable String note) {}
