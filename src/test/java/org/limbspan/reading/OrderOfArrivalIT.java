package org.limbspan.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.Answer;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** However the lines of a file arrive, the ledger ends up holding the same. */
@LimbspanIT
class OrderOfArrivalIT {

  private static final ReferenceFolder FOLDER = new ReferenceFolder("sent-twice");

  @Autowired private RestTestClient http;

  @Test
  void oneBatchLineByLineAndShuffledEndInTheSame() {
    List<String> lines = FOLDER.readingLines();
    String header = lines.get(0) + "\n";

    RigClient atOnce = FOLDER.describe(http, "order-batch");
    atOnce.postCsv("/readings", FOLDER.readings());

    RigClient oneByOne = FOLDER.describe(http, "order-lines");
    int stored = 0;
    for (String line : lines.subList(1, lines.size())) {
      Answer answer = oneByOne.postCsv("/readings", header + line + "\n");
      assertThat(answer.status()).isEqualTo(200);
      stored += answer.body().path("stored").asInt();
    }
    assertThat(stored).isEqualTo(FOLDER.truth().path("uniqueReadings").asInt());

    RigClient shuffled = FOLDER.describe(http, "order-shuffled");
    List<String> order = new ArrayList<>(lines.subList(1, lines.size()));
    Collections.shuffle(order, new Random(20_260_502));
    for (int from = 0; from < order.size(); from += 17) {
      List<String> part = order.subList(from, Math.min(order.size(), from + 17));
      shuffled.postCsv("/readings", header + String.join("\n", part) + "\n");
    }

    List<String> expected = held(atOnce);
    assertThat(held(oneByOne)).isEqualTo(expected);
    assertThat(held(shuffled)).isEqualTo(expected);
  }

  @Test
  void aSecondSendingOfTheWholeFileStoresNothing() {
    RigClient rig = FOLDER.describe(http, "order-again");
    rig.postCsv("/readings", FOLDER.readings());
    List<String> before = held(rig);
    Answer again = rig.postCsv("/readings", FOLDER.readings());
    assertThat(again.body().path("stored").asInt()).isZero();
    assertThat(again.body().path("alreadyHeld").asInt())
        .isEqualTo(again.body().path("received").asInt());
    assertThat(held(rig)).isEqualTo(before);
  }

  /** Everything but what tells when and as which row a reading came. */
  private static List<String> held(RigClient rig) {
    List<String> held = new ArrayList<>();
    for (JsonNode reading : rig.get("/readings?limit=5000").body().path("readings")) {
      ((tools.jackson.databind.node.ObjectNode) reading).remove(List.of("id", "enteredAt"));
      held.add(reading.toString());
    }
    return held;
  }
}
