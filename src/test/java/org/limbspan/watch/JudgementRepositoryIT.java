package org.limbspan.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/** The nights of a judgement are kept in parts, and only those that changed are written. */
@LimbspanIT
class JudgementRepositoryIT {

  private static final Instant AT = Instant.parse("2026-03-01T20:00:00.123456Z");

  @Autowired private JdbcClient jdbc;
  @Autowired private JsonMapper json;
  @Autowired private PlatformTransactionManager transactions;

  @Test
  void writesOnlyThePartsThatChanged() {
    JudgementRepository one = new JudgementRepository(jdbc, json);
    List<NightsResult.Night> nights = nights(600);
    save(one, 901, 1, nights);
    Map<Integer, String> before = written(901);

    nights.add(night(600));
    save(one, 901, 2, nights);

    Map<Integer, String> after = written(901);
    assertThat(after).hasSize(3).containsEntry(0, before.get(0)).containsEntry(1, before.get(1));
    assertThat(after.get(2)).isNotEqualTo(before.get(2));
    assertThat(found(one, 901)).isEqualTo(nights);
    assertThat(found(new JudgementRepository(jdbc, json), 901)).isEqualTo(nights);
  }

  @Test
  void takesAwayThePartsOfNightsThatAreNoMore() {
    JudgementRepository one = new JudgementRepository(jdbc, json);
    save(one, 902, 1, nights(600));
    save(one, 902, 2, nights(200));
    assertThat(written(902)).hasSize(1);
    assertThat(found(one, 902)).isEqualTo(nights(200));
    save(one, 902, 3, nights(0));
    assertThat(written(902)).isEmpty();
    assertThat(found(one, 902)).isEmpty();
  }

  @Test
  void twoInstancesDoNotTrustWhatTheyWroteBeforeTheOther() {
    JudgementRepository one = new JudgementRepository(jdbc, json);
    JudgementRepository other = new JudgementRepository(jdbc, json);
    List<NightsResult.Night> corrected = nights(600);
    corrected.set(3, night(7000));
    save(one, 903, 1, nights(600));
    save(other, 903, 2, corrected);
    assertThat(found(one, 903)).isEqualTo(corrected);
    save(one, 903, 3, nights(600));
    assertThat(found(other, 903)).isEqualTo(nights(600));
    save(other, 903, 4, corrected);
    assertThat(found(one, 903)).isEqualTo(corrected);
  }

  @Test
  void doesNotTrustWhatWasGivenUp() {
    JudgementRepository one = new JudgementRepository(jdbc, json);
    List<NightsResult.Night> corrected = nights(600);
    corrected.set(3, night(7000));
    save(one, 904, 1, nights(600));
    new TransactionTemplate(transactions)
        .executeWithoutResult(
            status -> {
              one.lock(904);
              one.save(904, 2, AT.plusSeconds(2), document(corrected));
              status.setRollbackOnly();
            });
    assertThat(found(one, 904)).isEqualTo(nights(600));
    save(one, 904, 3, corrected);
    assertThat(found(one, 904)).isEqualTo(corrected);
  }

  private void save(
      JudgementRepository judgements, long rigId, long revision, List<NightsResult.Night> nights) {
    new TransactionTemplate(transactions)
        .executeWithoutResult(
            status -> {
              judgements.lock(rigId);
              judgements.save(rigId, revision, AT.plusSeconds(revision), document(nights));
            });
  }

  private static List<NightsResult.Night> found(JudgementRepository judgements, long rigId) {
    return judgements.find(rigId).orElseThrow().document().nights().nights();
  }

  /** The transaction that wrote each part. */
  private Map<Integer, String> written(long rigId) {
    Map<Integer, String> written = new TreeMap<>();
    jdbc.sql("select number, xmin::text from judgement_nights where rig_id = :rigId")
        .param("rigId", rigId)
        .query((row, number) -> written.put(row.getInt(1), row.getString(2)))
        .list();
    return written;
  }

  private static JudgementDocument document(List<NightsResult.Night> nights) {
    return new JudgementDocument(
        new CycleResult(
            0,
            new CycleResult.Swing(null, null, "too-few"),
            null,
            null,
            null,
            List.of(),
            List.of()),
        new NightsResult(
            nights,
            new NightsResult.Summary(
                nights.size(), null, null, null, null, null, null, null, "too-few")),
        new HypothesesResult(List.of(), null, List.of(), List.of()),
        OwnResult.NONE);
  }

  private static List<NightsResult.Night> nights(int count) {
    List<NightsResult.Night> nights = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      nights.add(night(i));
    }
    return nights;
  }

  private static NightsResult.Night night(int number) {
    Instant at = AT.plusSeconds(89_400L * number);
    return new NightsResult.Night(
        at,
        at.minusSeconds(14_400),
        at.minusSeconds(60),
        12.5,
        48.25 + 1e-3 * number,
        "horizontal",
        2,
        1.0123 + 1e-7 / 3 * number,
        0.0012,
        1.0119,
        "agrees");
  }
}
