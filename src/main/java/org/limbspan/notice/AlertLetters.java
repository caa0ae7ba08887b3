package org.limbspan.notice;

import java.util.List;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertReply;

/** Says in words what became of an alert. */
final class AlertLetters {

  private AlertLetters() {}

  static Letter raised(Rig rig, Alert alert) {
    return letter(
        rig,
        "",
        alert,
        List.of(
            alert.words().howMuch() + " " + alert.words().since(),
            alert.words().howSure() + " " + alert.words().shownBy(),
            alert.words().likelyCauses(),
            alert.words().whatToDo()));
  }

  static Letter settled(Rig rig, Alert alert) {
    List<AlertReply> replies = alert.answers();
    String answered =
        replies.isEmpty()
            ? ""
            : "Your answer was: " + replies.get(replies.size() - 1).cause() + ".";
    return letter(
        rig,
        "Settled: ",
        alert,
        List.of("Enough later readings agree, so this remark is settled.", answered));
  }

  static Letter withdrawn(Rig rig, Alert alert) {
    return letter(
        rig,
        "Taken back: ",
        alert,
        List.of(
            "With what the ledger holds by now this is found no more, so the remark is taken back."
                + " Readings that came in later, or that were put right, can do that."));
  }

  private static Letter letter(Rig rig, String fate, Alert alert, List<String> paragraphs) {
    StringBuilder text =
        new StringBuilder("Rig: ").append(rig.name()).append("\n\n").append(alert.words().what());
    paragraphs.stream()
        .filter(each -> !each.isBlank())
        .forEach(each -> text.append("\n\n").append(each));
    text.append("\n\nThe evidence, and the place to answer, is the page Remarks of the rig.\n");
    return new Letter(
        OneLine.of(rig.name() + ": " + fate + alert.words().what()),
        text.toString(),
        "/rigs/" + rig.slug() + "/alerts");
  }
}
