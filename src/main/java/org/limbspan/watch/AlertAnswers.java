package org.limbspan.watch;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** The owner's answers, by alert. */
@Component
class AlertAnswers {

  private final AlertAnswerRepository answers;

  AlertAnswers(AlertAnswerRepository answers) {
    this.answers = answers;
  }

  Map<UUID, List<AlertReply>> byAlert(long rigId) {
    return answers.findByRigIdOrderByAnsweredAtAscIdAsc(rigId).stream()
        .collect(
            groupingBy(AlertAnswerEntity::alertId, mapping(AlertAnswerEntity::reply, toList())));
  }

  void add(long rigId, UUID alertId, AlertReply reply) {
    answers.save(new AlertAnswerEntity(rigId, alertId, reply));
  }
}
