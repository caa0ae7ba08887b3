package org.limbspan.dashboard;

import java.time.Clock;
import java.time.zone.ZoneRulesProvider;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeSet;
import org.limbspan.platform.Conflict;
import org.limbspan.rig.NewRig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Site;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;

/** The form that describes a rig. */
@Controller
@RequestMapping("/rigs/new")
class RigFormController {

  private final Rigs rigs;
  private final Clock clock;

  RigFormController(Rigs rigs, Clock clock) {
    this.rigs = rigs;
    this.clock = clock;
  }

  @GetMapping
  ModelAndView form() {
    return new ModelAndView("rig-form", model(RigForm.EMPTY, Map.of(), false));
  }

  @PostMapping
  ModelAndView enter(@ModelAttribute RigForm form) {
    RigDescription description = new RigDescription(form, clock.instant());
    Map<String, String> complaints = new LinkedHashMap<>(description.complaints());
    if (complaints.isEmpty()) {
      try {
        return new ModelAndView("redirect:/rigs/" + rigs.describe(newRig(description)).slug());
      } catch (Conflict taken) {
        complaints.put("slug", taken.detail() + " Expected a short name that no other rig has.");
      }
    }
    ModelAndView page = new ModelAndView("rig-form", HttpStatus.UNPROCESSABLE_CONTENT);
    page.addAllObjects(model(form, complaints, description.isZoneDoubted()));
    return page;
  }

  private static NewRig newRig(RigDescription description) {
    return new NewRig(
        description.slug(),
        description.name(),
        new Site(description.latitudeDeg(), description.longitudeDeg(), description.elevationM()),
        description.timeZone(),
        description.note().orElse(null));
  }

  private static Map<String, Object> model(
      RigForm form, Map<String, String> complaints, boolean zoneDoubted) {
    return Map.of(
        "form", form,
        "complaints", complaints,
        "zoneDoubted", zoneDoubted,
        "zones", new TreeSet<>(ZoneRulesProvider.getAvailableZoneIds()));
  }
}
