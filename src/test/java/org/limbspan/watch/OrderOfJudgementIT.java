package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** However the facts arrive, and whatever was judged on the way, the end is the same. */
@LimbspanIT
class OrderOfJudgementIT {

  private static final ReferenceFolder FOLDER = new ReferenceFolder("step-0.5");

  @Autowired private RestTestClient http;

  @Test
  void oneBatchLineByLineAndShuffledEndInTheSameJudgement() {
    List<String> lines = FOLDER.readingLines();
    List<String> body = lines.subList(1, lines.size());

    RigClient atOnce = FOLDER.describe(http, "judgement-batch");
    atOnce.postCsv("/readings", FOLDER.readings());
    List<String> expected = judgement(atOnce);
    assertThat(expected.toString()).contains("scale-step");

    RigClient oneByOne = FOLDER.describe(http, "judgement-lines");
    body.forEach(line -> send(oneByOne, List.of(line)));
    assertThat(judgement(oneByOne)).isEqualTo(expected);

    RigClient shuffled = FOLDER.describe(http, "judgement-shuffled");
    List<String> order = new ArrayList<>(body);
    Collections.shuffle(order, new Random(20_261_125));
    for (int from = 0; from < order.size(); from += 13) {
      send(shuffled, order.subList(from, Math.min(order.size(), from + 13)));
      Judged.get(shuffled, "/alerts"); // judged on the way, so that stale alerts would show
    }
    assertThat(judgement(shuffled)).isEqualTo(expected);
  }

  private static void send(RigClient rig, List<String> lines) {
    String csv = FOLDER.readingLines().get(0) + "\n" + String.join("\n", lines) + "\n";
    assertThat(rig.postCsv("/readings", csv).status()).isEqualTo(200);
  }

  /** Everything that is judged, without ids (they name the rig) and the times of judging. */
  private static List<String> judgement(RigClient rig) {
    List<String> parts = new ArrayList<>();
    for (JsonNode alert : Judged.get(rig, "/alerts").path("alerts")) {
      ((ObjectNode) alert).remove(List.of("id", "raisedAt"));
      parts.add(alert.toString());
    }
    for (String path : List.of("/cycle", "/nights", "/hypotheses")) {
      JsonNode body = Judged.get(rig, path);
      ((ObjectNode) body).remove("judgedAt");
      parts.add(body.toString());
    }
    return parts;
  }
}
