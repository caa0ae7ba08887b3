package org.limbspan.rig;

import java.util.List;
import java.util.Optional;
import org.springframework.data.repository.Repository;

interface RigRepository extends Repository<RigEntity, Long> {

  RigEntity save(RigEntity rig);

  Optional<RigEntity> findById(long id);

  Optional<RigEntity> findBySlug(String slug);

  boolean existsBySlug(String slug);

  List<RigEntity> findAllByOrderBySlug();
}
