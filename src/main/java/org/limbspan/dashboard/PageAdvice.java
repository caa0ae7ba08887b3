package org.limbspan.dashboard;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Doorkeeper;
import org.limbspan.platform.Visitor;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.ModelAttribute;

/** What every page needs. */
@ControllerAdvice
class PageAdvice {

  private final Doorkeeper doorkeeper;

  PageAdvice(Doorkeeper doorkeeper) {
    this.doorkeeper = doorkeeper;
  }

  @ModelAttribute("light")
  Light light(
      @CookieValue(name = LightController.COOKIE, required = false) @Nullable String chosen) {
    return Light.ofLabel(chosen);
  }

  @ModelAttribute("lights")
  List<Light> lights() {
    return List.of(Light.values());
  }

  /** Whether forms are shown. */
  @ModelAttribute("mayWrite")
  boolean mayWrite() {
    return doorkeeper.visitor().mayWrite();
  }

  /** Whether somebody looks who is not told where the rig stands. */
  @ModelAttribute("guest")
  boolean guest() {
    return doorkeeper.visitor() == Visitor.GUEST;
  }

  /** Whether there is a login to be ended. */
  @ModelAttribute("loggedIn")
  boolean loggedIn() {
    return doorkeeper.visitor() == Visitor.OWNER;
  }
}
