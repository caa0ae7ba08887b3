package org.limbspan.dashboard;

import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.Doorkeeper;
import org.limbspan.platform.Visitor;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The page on which the owner logs in. What is sent from it never comes here. */
@Controller
class LoginController {

  private final Doorkeeper doorkeeper;

  LoginController(Doorkeeper doorkeeper) {
    this.doorkeeper = doorkeeper;
  }

  /**
   * @param to where to go on afterwards
   * @param refused whether a password was wrong just now
   * @param left whether a login was ended just now
   */
  @GetMapping("/login")
  ModelAndView ask(
      @RequestParam(defaultValue = "/") String to,
      @RequestParam(required = false) @Nullable String refused,
      @RequestParam(required = false) @Nullable String left,
      HttpServletResponse response) {
    if (doorkeeper.visitor() != Visitor.STRANGER) {
      return new ModelAndView("redirect:/");
    }
    response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
    return new ModelAndView("login")
        .addObject("to", to)
        .addObject("refused", refused != null)
        .addObject("left", left != null);
  }
}
