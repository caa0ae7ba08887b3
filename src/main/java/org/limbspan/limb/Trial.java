package org.limbspan.limb;
import java.util.*;
/** scratch */
public final class Trial {
  public static boolean verbose;
  public static double[] run(LinearImage image) {
    long t0 = System.nanoTime();
    var found = MoonFinder.find(image);
    if (found.isEmpty()) { System.out.println("NO MOON"); return null; }
    long t1 = System.nanoTime();
    Outline o = found.get().outline();
    if (verbose) System.out.println("found " + found.get());
    double w = Math.max(14, 0.035 * o.meanRadius());
    double sigma = 1;
    for (int k = 0; k < 3; k++) {
      Annulus an = new Annulus(image, o, w);
      var first = new FirstLook(an).edges();
      List<SectorEdge> es = new ArrayList<>();
      for (var e : first) es.add(new SectorEdge(an.angle(e.sector()), e.shift(), 0.3, e.contrast(), e.contrast()/e.signalToNoise(), 0, 0, 0, 0, 1));
      var kept = LimbSelection.agreeing(es, o);
      var ang = new HashSet<Double>(); for (var e : kept) ang.add(e.angle());
      double[] sg = first.stream().filter(e -> ang.contains(an.angle(e.sector()))).mapToDouble(FirstLook.Edge::sigma).sorted().toArray();
      if (sg.length == 0) { System.out.println("no edges"); return null; }
      sigma = Math.max(0.5, sg[sg.length / 2]);
      List<OutlineFit.Point> pts = new ArrayList<>();
      for (var e : kept) { var p = o.pointAt(e.angle()); double f = 1 + e.shift() / o.meanRadius(); p = o.pointAt(e.angle(), f); pts.add(new OutlineFit.Point(p[0], p[1], 1)); }
      o = OutlineFit.ellipse(pts, o);
      if (verbose) System.out.println("first " + first.size() + " kept " + kept.size() + " sigma " + sigma + " " + o);
      w = Math.max(10, 7 * sigma);
    }
    long t2 = System.nanoTime();
    LitArea lit = new LitArea(image, o);
    Illumination sun0 = lit.illuminatedFraction() > 0.93 ? Illumination.FULL : Illumination.of(lit.illuminatedFraction(), lit.directionRad());
    if (verbose) System.out.println("lit " + lit.illuminatedFraction() + " dir " + Math.toDegrees(lit.directionRad()) + " off " + lit.offset() + " clip " + lit.clippedShare());
    Illumination sun = sun0; Terminator term = Terminator.FAR; boolean near = lit.illuminatedFraction() > 0.93;
    LimbAdjustment adj = null; int used = 0, tot = 0;
    for (int k = 0; k < 3; k++) {
      w = Math.max(8, 3 * sigma * 2.3548);
      EdgeShape shape = new EdgeShape(sigma, 0.06, 2 * w + 10 * sigma);
      EdgeShape wide = shape.withSigma(sigma + 0.1);
      Annulus an = new Annulus(image, o, w);
      if (near && k > 0) { long q=System.nanoTime(); PhaseSearch ps = new PhaseSearch(an, shape); sun = ps.illumination(); term = ps; if (verbose) System.out.printf("search %s k %.4f dir %.0f %.0f ms%n", sun, sun.illuminatedFraction(), Math.toDegrees(Math.atan2(sun.towardsY(), sun.towardsX())), (System.nanoTime()-q)/1e6); }
      SectorFit sf = new SectorFit(an, k < 2, 7); final Illumination fs = sun; final Terminator ft = term; final double fsig = sigma;
      List<SectorEdge> es = new ArrayList<>();
      for (int s = 0; s < an.sectors(); s++) {
        if (an.outside(s)) continue;
        double m = sun.sunOverLimb(an.angle(s));
        EdgeTemplate t = new EdgeTemplate(shape, sun, m, o.meanRadius(), 2 * w);
        EdgeTemplate tw = k < 2 ? new EdgeTemplate(wide, sun, m, o.meanRadius(), 2 * w) : t;
        sf.fit(s, 0, t, tw, 0.1).ifPresent(es::add);
      }
      tot = es.size();
      var p = LimbSelection.plausible(es);
      if (!near) p.removeIf(e -> fs.sunOverLimb(e.angle()) < 0); else p.removeIf(e -> ft.hidden(e.angle()) > 2.35 * fsig);
      var kept = LimbSelection.agreeing(p, o);
      used = kept.size();
      if (kept.size() < 20) { System.out.println("few"); return null; }
      if (k < 2) { double[] ws = kept.stream().mapToDouble(SectorEdge::widthShift).sorted().toArray(); sigma = Math.max(0.4, sigma + ws[ws.length / 2]); }
      adj = new LimbAdjustment(kept, o, term, 0.02);
      o = adj.outline();
      if (verbose) System.out.printf("k %d es %d plaus %d kept %d sigma %.3f rip %.3f L %.1f g %.2f  2a %.3f 2b %.3f %s%n", k, es.size(), p.size(), kept.size(), sigma, adj.solution().ripplePx(), Math.toDegrees(adj.solution().rippleLengthRad()), adj.solution().noiseFactor(), 2 * o.horizontalRadius(), 2 * o.verticalRadius(), o);
    }
    long t3 = System.nanoTime();
    var s = adj.solution();
    double uh = 2 * Math.sqrt(s.total().getEntry(2, 2)), uv = 2 * Math.sqrt(s.total().getEntry(3, 3));
    if (verbose) System.out.printf("u h %.3f (noise %.3f rip %.3f rel %.3f) v %.3f ; times %.0f %.0f %.0f ms%n", uh, 2 * Math.sqrt(s.noise().getEntry(2, 2)), 2 * Math.sqrt(s.ripple().getEntry(2, 2)), 2 * Math.sqrt(s.relief().getEntry(2, 2)), uv, (t1 - t0) / 1e6, (t2 - t1) / 1e6, (t3 - t2) / 1e6);
    return new double[] {o.horizontalDiameterPx(), o.verticalDiameterPx(), uh, uv, used * 360.0 / Annulus.sectorCount(o), sigma * 2.3548};
  }
}
