package org.limbspan.dashboard;

import java.util.List;
import java.util.Locale;
import org.limbspan.dashboard.LedgerSheet.Cause;
import org.limbspan.dashboard.LedgerSheet.Remark;
import org.limbspan.watch.Alert;
import org.limbspan.watch.AlertReply;
import org.limbspan.watch.AnswerCause;

/** An alert as a remark in the ledger. */
final class RemarkWords {

  private RemarkWords() {}

  static Remark of(int number, Alert alert, RigTime time) {
    return new Remark(
        number,
        alert.id().toString(),
        alert.kind(),
        alert.words().what(),
        "about " + time.shortDay(alert.onsetAt()),
        time.span(alert.onsetFrom(), alert.onsetTo()),
        state(alert.state()),
        List.of(
            alert.words().howMuch() + " " + alert.words().since(),
            alert.words().howSure() + " " + alert.words().shownBy()),
        EvidenceDrawing.words(alert.kind()),
        alert.likelyCauses().stream()
            .map(cause -> new Cause(cause.words(), odds(cause.probability())))
            .toList(),
        alert.words().whatToDo(),
        alert.answers().stream().map(reply -> reply(reply, time)).toList(),
        alert.state().equals("raised"),
        time.field(alert.onsetAt()));
  }

  private static String state(String state) {
    return switch (state) {
      case "raised" -> "waits for an answer";
      case "answered" -> "answered; later readings will tell";
      default -> "settled";
    };
  }

  private static String odds(double probability) {
    if (probability > 0.99) {
      return "over 99 in 100";
    }
    return probability < 0.01
        ? "under 1 in 100"
        : String.format(Locale.ROOT, "%.0f in 100", probability * 100);
  }

  private static String reply(AlertReply reply, RigTime time) {
    StringBuilder words =
        new StringBuilder("Answered ")
            .append(time.minute(reply.answeredAt()))
            .append(": ")
            .append(causeWords(reply.cause()));
    if (reply.changedAt() != null) {
      words.append(", at ").append(time.minute(reply.changedAt()));
    }
    words.append('.');
    if (reply.note() != null) {
      words.append(" \u201c").append(reply.note()).append('\u201d');
    }
    if (reply.consequence() != null) {
      words.append(' ').append(reply.consequence());
    }
    return words.toString();
  }

  private static String causeWords(String label) {
    for (AnswerCause cause : AnswerCause.values()) {
      if (cause.label().equals(label)) {
        return cause.words();
      }
    }
    return label;
  }
}
