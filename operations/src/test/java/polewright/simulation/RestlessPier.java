package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.Pier;
import polewright.planning.seasons.Seasons;
import polewright.session.NightId;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** A hidden wedge on a pier that moves between the nights as the test specifies; within a night it is stable. */
final class RestlessPier {
    static final Instant FIRST = Instant.parse("2025-01-10T20:00:00Z");

    private static final double SECONDS_PER_MONTH = 365.25 / 12 * 86_400;

    private final Function<Instant, AxisOffset> motion;
    private final RandomGenerator random;
    private final List<NightRecord> nights = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant movedUntil = FIRST;

    /** @param motion its displacement at a time, from an arbitrary origin */
    RestlessPier(Site site, Rig rig, AxisOffset first, Function<Instant, AxisOffset> motion, long seed) {
        this.random = PractisedWedge.random(seed);
        this.motion = motion;
        this.wedge = HiddenWedge.of(site, rig, first, random);
    }

    /** This much per month, from the first night on. */
    static Function<Instant, AxisOffset> steadily(double eastArcmin, double upArcmin) {
        return at -> AxisOffset.ofArcminutes(eastArcmin * months(at), upArcmin * months(at));
    }

    static double months(Instant at) {
        return Duration.between(FIRST, at).toSeconds() / SECONDS_PER_MONTH;
    }

    /** A night this many days after the first, with these actions; the pier has moved meanwhile. */
    RestlessPier night(double days, Function<PractisedWedge, PractisedWedge> done) {
        Instant at = FIRST.plusSeconds(Math.round(days * 86_400));
        moved(motion.apply(at).minus(motion.apply(movedUntil)));
        movedUntil = at;
        PractisedWedge night = done.apply(new PractisedWedge(wedge, wedge.rig(), at, random));
        wedge = night.wedge();
        nights.add(NightRecord.of(new NightId(nights.size() + 1), night.events()));
        return this;
    }

    /** An additional displacement. */
    RestlessPier moved(AxisOffset by) {
        wedge = PractisedWedge.pointing(wedge, wedge.offset().plus(by));
        return this;
    }

    /** A random displacement of about this size, in any direction. */
    RestlessPier shaken(Angle sigma) {
        return moved(new AxisOffset(sigma.times(random.nextGaussian()), sigma.times(random.nextGaussian())));
    }

    HiddenWedge wedge() {
        return wedge;
    }

    List<NightRecord> nights() {
        return List.copyOf(nights);
    }

    Seasons seasons() {
        return Seasons.of(Pier.of(nights.get(nights.size() - 1).begun()), nights);
    }

    Seasons.Compared compared() {
        return (Seasons.Compared) seasons();
    }

    NightGap.Drifted drift(int gap) {
        return (NightGap.Drifted) compared().gaps().get(gap);
    }

    /** Sighted, corrected, clamped and sighted again. */
    static PractisedWedge setRight(PractisedWedge night) {
        return night.seenByCamera()
                .turnedToThePole()
                .clamped(AxisOffset.NONE, Angle.ofArcminutes(0.5))
                .seenByCamera();
    }
}
