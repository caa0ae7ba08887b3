package org.limbspan.bench.service;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** The services that clients talk to in turn, and who of them is killed. */
final class Household implements AutoCloseable {

  private static final List<String> OPTIONS = List.of("-Xmx256m");

  private final List<ServiceProcess> services;
  private final @Nullable DatabaseServer server;
  private final AtomicInteger turn = new AtomicInteger();

  private Household(List<ServiceProcess> services, @Nullable DatabaseServer server) {
    this.services = services;
    this.server = server;
  }

  /** One service with its embedded database. */
  static Household ofOne(Path jar, Path home) throws IOException {
    return new Household(List.of(ServiceProcess.of(jar, home, OPTIONS, List.of(), Map.of())), null);
  }

  /** Two services with homes of their own on one database. */
  static Household ofTwo(Path jar, Path folder) throws IOException {
    DatabaseServer server = new DatabaseServer(folder.resolve("server"));
    server.start();
    List<ServiceProcess> services = new ArrayList<>();
    for (String name : List.of("first", "second")) {
      services.add(server.serviceOf(jar, folder.resolve(name), OPTIONS));
    }
    return new Household(services, server);
  }

  void start() throws IOException, InterruptedException {
    for (ServiceProcess service : services) {
      service.start();
    }
  }

  /** Whom to ask next. */
  Http next() {
    return services.get(Math.floorMod(turn.getAndIncrement(), services.size())).http();
  }

  /** Through a service that is up. */
  Stand stand() throws IOException, InterruptedException {
    for (ServiceProcess service : services) {
      if (service.isAlive() && service.http().status("/actuator/health") == 200) {
        return new Stand(service.http());
      }
    }
    awaitHealth();
    return new Stand(services.get(0).http());
  }

  /** Kills somebody and says whom. */
  String kill(Random random) throws IOException, InterruptedException {
    if (server != null) {
      int which = random.nextInt(5);
      if (which == 4) {
        server.killOne(random);
        return "one process of the database";
      }
      services.get(which % 2).kill();
      return which % 2 == 0 ? "first instance" : "second instance";
    }
    List<Victim> victims = List.of(Victim.values());
    Victim victim = victims.get(random.nextInt(victims.size()));
    victim.kill(services.get(0), random);
    return victim.words;
  }

  /** Starts who is dead; waits until all are well. */
  void recover() throws IOException, InterruptedException {
    for (ServiceProcess service : services) {
      if (!service.isAlive()) {
        service.launch();
      }
    }
    awaitHealth();
  }

  void awaitHealth() throws IOException, InterruptedException {
    for (ServiceProcess service : services) {
      service.awaitHealth();
    }
  }

  @Override
  public void close() {
    services.forEach(ServiceProcess::close);
    if (server != null) {
      server.close();
    }
  }
}
