package org.limbspan.bench.service;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What clients were told is held, against what is held. */
final class Balance {

  private final Map<String, Set<String>> told = new TreeMap<>();
  private int lost;
  private int doubled;
  private int foreign;

  /** It was answered: held. */
  void add(Deed deed) {
    told.computeIfAbsent(deed.rig(), rig -> new TreeSet<>()).addAll(deed.readings());
  }

  /** Compares one rig; nothing of it may be under way. */
  void compare(String rig, Stand stand) throws IOException, InterruptedException {
    Set<String> expected = told.getOrDefault(rig, Set.of());
    List<String> held = stand.readings(rig);
    Set<String> different = new HashSet<>(held);
    doubled += held.size() - different.size();
    lost += (int) expected.stream().filter(at -> !different.contains(at)).count();
    foreign += (int) different.stream().filter(at -> !expected.contains(at)).count();
  }

  int lost() {
    return lost;
  }

  int doubled() {
    return doubled;
  }

  /** Held, but never sent. */
  int foreign() {
    return foreign;
  }

  int count() {
    return told.values().stream().mapToInt(Set::size).sum();
  }

  Set<String> rigs() {
    return told.keySet();
  }
}
