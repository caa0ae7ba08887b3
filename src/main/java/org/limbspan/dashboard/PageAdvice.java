package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.ModelAttribute;

/** What every page needs. */
@ControllerAdvice
class PageAdvice {

  @ModelAttribute("light")
  Light light(
      @CookieValue(name = LightController.COOKIE, required = false) @Nullable String chosen) {
    return Light.ofLabel(chosen);
  }

  @ModelAttribute("lights")
  List<Light> lights() {
    return List.of(Light.values());
  }
}
