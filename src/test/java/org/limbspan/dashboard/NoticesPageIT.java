package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.notice.NoticeSetting;
import org.limbspan.testing.RigClient;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.ExchangeResult;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** The page of the notices, by its forms. */
class NoticesPageIT extends NoticeSetting {

  private static final Pattern ID = Pattern.compile("id=\"recipient-([0-9a-f-]{36})\"");

  @Test
  void entersTestsPausesChangesAndRemovesARecipient() {
    RigClient rig = RigClient.described(http, "notice-page");
    String page = "/rigs/" + rig.slug() + "/notices";
    assertThat(text(get(page))).contains("Nobody yet: nothing is sent.");

    assertThat(post(page, recipient("mail", "page@house.example")).getStatus())
        .isEqualTo(HttpStatus.FOUND);
    String listed = text(get(page));
    assertThat(listed)
        .contains("page@house.example", "(mail)", "Told when a remark is raised.")
        .contains("Nothing is sent from 22:30 to 07:00.", "Nothing was delivered yet.");
    Matcher id = ID.matcher(listed);
    assertThat(id.find()).isTrue();
    String own = page + "/" + id.group(1);

    assertThat(text(post(own + "/test", new LinkedMultiValueMap<>())))
        .contains(
            "The test was delivered, ", "Delivered last: \u201cInvented garden: a test\u201d");
    assertThat(mailbox("page@house.example")).hasSize(1);

    post(own + "/pause", new LinkedMultiValueMap<>());
    assertThat(text(get(page))).contains("(mail, paused)");
    post(own + "/resume", new LinkedMultiValueMap<>());
    assertThat(text(get(page))).contains("(mail)");

    MultiValueMap<String, String> wishes = recipient("mail", "ignored@house.example");
    wishes.set("notices", "alert-settled");
    wishes.add("notices", "window-reminder");
    wishes.add("notices", "rig-silent");
    wishes.set("quietFrom", "");
    wishes.set("quietTo", "");
    post(own, wishes);
    assertThat(text(get(page)))
        .contains("Told when an answered remark is settled; when a window", "page@house.example")
        .contains("Reminders come 45 minutes before low windows.")
        .contains("Silence is told after 12 passes.")
        .doesNotContain("Nothing is sent from");

    post(own + "/remove", new LinkedMultiValueMap<>());
    assertThat(text(get(page))).contains("Nobody yet: nothing is sent.");
  }

  @Test
  void showsTheSecretOfAWebhookOnceAndWhyATestFailed() {
    RigClient rig = RigClient.described(http, "notice-page-hook");
    String page = "/rigs/" + rig.slug() + "/notices";
    ExchangeResult entered = post(page, recipient("webhook", "http://127.0.0.1:9/hook"));
    assertThat(entered.getStatus()).isEqualTo(HttpStatus.OK);
    assertThat(entered.getResponseHeaders().getFirst(HttpHeaders.CACHE_CONTROL))
        .contains("no-store");
    assertThat(text(entered)).containsPattern("limbspan-hook-[A-Za-z0-9_-]{43}<");
    String listed = text(get(page));
    assertThat(listed).contains("http://127.0.0.1:9/hook").doesNotContainPattern("limbspan-hook-");
    Matcher id = ID.matcher(listed);
    assertThat(id.find()).isTrue();
    assertThat(text(post(page + "/" + id.group(1) + "/test", new LinkedMultiValueMap<>())))
        .contains("The test failed: no connection could be made")
        .contains("(webhook, failing)", "1 notice was given up");
  }

  @Test
  void keepsWhatWasWrittenBesideWhatIsWrongWithIt() {
    RigClient rig = RigClient.described(http, "notice-page-wrong");
    String page = "/rigs/" + rig.slug() + "/notices";
    MultiValueMap<String, String> form = recipient("mail", "nobody");
    ExchangeResult refused = post(page, form);
    assertThat(refused.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(text(refused))
        .contains("value=\"nobody\"", "Expected one mail address", "aria-invalid=\"true\"");
    form.set("address", "moon@house.example");
    form.set("quietTo", "soon");
    assertThat(text(post(page, form)))
        .contains("value=\"soon\"", "Expected a time such as 22:30")
        .contains("Nobody yet: nothing is sent.");
    form.set("quietTo", "22:30");
    assertThat(text(post(page, form)))
        .contains("Expected another time than that of the beginning.");
    form.set("silentPasses", "0");
    assertThat(text(post(page, form))).contains("Expected 1 to 60 passes.");
    form.set("reminderMinutes", "a while");
    assertThat(text(post(page, form))).contains("Expected 5 to 720 minutes.");
    form.remove("channel");
    assertThat(text(post(page, form))).contains("One of the two is needed.");
  }

  private static MultiValueMap<String, String> recipient(String channel, String address) {
    MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
    form.add("channel", channel);
    form.add("address", address);
    form.add("notices", "alert-raised");
    form.add("quietFrom", "22:30");
    form.add("quietTo", "07:00");
    form.add("reminderMinutes", "45");
    form.add("reminderPlaces", "low");
    form.add("silentPasses", "12");
    return form;
  }

  private ExchangeResult post(String path, MultiValueMap<String, String> form) {
    return http.post()
        .uri(path)
        .contentType(MediaType.APPLICATION_FORM_URLENCODED)
        .accept(MediaType.TEXT_HTML)
        .body(form)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private ExchangeResult get(String path) {
    return http.get().uri(path).accept(MediaType.TEXT_HTML).exchange().expectBody().returnResult();
  }

  private static String text(ExchangeResult result) {
    return new String(result.getResponseBodyContent(), StandardCharsets.UTF_8);
  }
}
