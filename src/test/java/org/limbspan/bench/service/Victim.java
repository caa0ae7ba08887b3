package org.limbspan.bench.service;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

/** What is killed, always as SIGKILL does: without a word. */
enum Victim {
  SERVICE("the service") {
    @Override
    void kill(ServiceProcess service, Random random) throws InterruptedException {
      service.kill();
    }
  },
  SERVER("the database's main process") {
    @Override
    void kill(ServiceProcess service, Random random) throws IOException {
      service.postmaster().ifPresent(ProcessHandle::destroyForcibly);
    }
  },
  BACKEND("one process of the database") {
    @Override
    void kill(ServiceProcess service, Random random) throws IOException {
      List<ProcessHandle> children =
          service.postmaster().map(main -> main.children().toList()).orElse(List.of());
      if (!children.isEmpty()) {
        children.get(random.nextInt(children.size())).destroyForcibly();
      }
    }
  },
  EVERYTHING("service and database") {
    @Override
    void kill(ServiceProcess service, Random random) throws IOException, InterruptedException {
      List<ProcessHandle> database =
          service.postmaster().stream()
              .flatMap(main -> Stream.concat(Stream.of(main), main.children()))
              .toList();
      service.kill();
      database.forEach(ProcessHandle::destroyForcibly);
    }
  };

  final String words;

  Victim(String words) {
    this.words = words;
  }

  abstract void kill(ServiceProcess service, Random random)
      throws IOException, InterruptedException;
}
