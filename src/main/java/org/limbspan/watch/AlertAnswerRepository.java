package org.limbspan.watch;

import java.util.List;
import org.springframework.data.repository.Repository;

interface AlertAnswerRepository extends Repository<AlertAnswerEntity, Long> {

  AlertAnswerEntity save(AlertAnswerEntity answer);

  List<AlertAnswerEntity> findByRigIdOrderByAnsweredAtAscIdAsc(long rigId);
}
