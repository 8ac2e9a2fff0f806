package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * A random night with many mistakes: drifts entered in the wrong direction or misread, turns not made as entered,
 * screws that slip or differ from the rig description.
 */
final class QuarrelsomeNight {
    private static final Rig RIG = ToldRig.measured();
    private static final Angle DRIFT_SIGMA = Angle.ofArcseconds(3);
    private static final double FALSE_SIGHTING = 0.06;
    private static final double FALSE_TURN = 0.08;

    private final Random random;
    private final double mistakes;
    private final Site site;
    private final double azimuthFactor;
    private final double altitudeFactor;
    private final List<Step> steps = new ArrayList<>();
    private KnownAxis axis;

    private QuarrelsomeNight(long seed, double mistakes) {
        random = new Random(seed);
        this.mistakes = mistakes;
        site = Site.ofDegrees((seed % 2 == 0 ? 1 : -1) * (10 + 50 * random.nextDouble()), 0, 200);
        azimuthFactor = factor(RIG.azimuthScrew());
        altitudeFactor = factor(RIG.altitudeScrew());
        AxisOffset offset = AxisOffset.ofArcminutes(120 * random.nextGaussian(), 120 * random.nextGaussian());
        axis = new KnownAxis(site, AxisPointing.of(site, offset), random::nextGaussian);
    }

    static Fix fix(long seed) {
        QuarrelsomeNight night = new QuarrelsomeNight(seed, 1);
        night.play(1 + night.random.nextInt(6));
        return FixSolver.solve(night.site, RIG, KnownAxis.AIR, night.steps);
    }

    /**
     * A long night.
     *
     * @param mistakes rate of mistakes relative to the usual random night
     */
    static QuarrelsomeNight ofIntervals(int intervals, double mistakes, long seed) {
        QuarrelsomeNight night = new QuarrelsomeNight(seed, mistakes);
        night.play(intervals);
        return night;
    }

    Site site() {
        return site;
    }

    List<Step> steps() {
        return List.copyOf(steps);
    }

    GrowingFix growing() {
        return new GrowingFix(site, RIG, KnownAxis.AIR);
    }

    /** All steps together, none condensed. */
    Fix exactly() {
        return new FixSolver(CondensedPast.none(site, RIG), KnownAxis.AIR)
                .solve(steps)
                .fix();
    }

    private double factor(Screw screw) {
        double sigmas = (random.nextDouble() < 0.1 ? 3 : 1) * random.nextGaussian();
        return Math.max(0.2, 1 + screw.relativeGainSigma() * sigmas);
    }

    private void play(int intervals) {
        if (random.nextBoolean()) {
            steps.add(axis.step(next(), axis.scale(Angle.ofDegrees(0.5))));
            steps.add(axis.step(next(), axis.compass(Angle.ofDegrees(3))));
        }
        for (int interval = 0; interval < intervals; interval++) {
            if (interval > 0) {
                move();
            }
            int sightings = random.nextInt(7);
            for (int i = 0; i < sightings; i++) {
                steps.add(axis.step(next(), drift()));
            }
        }
    }

    private StarDrift drift() {
        StarDrift read =
                axis.drift(axis.star(-60 + 120 * random.nextDouble(), 50 * random.nextDouble()), 10, DRIFT_SIGMA);
        if (random.nextDouble() > mistakes * FALSE_SIGHTING) {
            return read;
        }
        return random.nextBoolean()
                ? KnownAxis.reversed(read)
                : new StarDrift(
                        read.at(),
                        read.length(),
                        read.star(),
                        ReadLength.ofArcseconds(60 * random.nextDouble()),
                        new DriftDirection.OnSky(random.nextBoolean(), ReticleNorth.MOUNT),
                        read.sigma());
    }

    private void move() {
        if (random.nextDouble() < 0.15) {
            Angle sigma = Angle.ofArcminutes(3);
            moved(3 * random.nextGaussian() / site.latitude().cos(), 3 * random.nextGaussian());
            steps.add(new Step.Shifted(next(), sigma));
            return;
        }
        double azimuth = random.nextInt(4) == 0 ? 0 : eighths(3);
        double altitude = azimuth != 0 && random.nextInt(3) == 0 ? 0 : eighths(3);
        steps.add(new Step.Turned(next(), azimuth, altitude));
        double made = 1;
        if (random.nextDouble() < mistakes * FALSE_TURN) {
            made = List.of(-1.0, 0.0, 0.33, 0.6).get(random.nextInt(4));
        }
        boolean both = random.nextBoolean();
        boolean swapped = random.nextDouble() < mistakes * FALSE_TURN / 3;
        turned(swapped ? altitude : azimuth * made, swapped ? azimuth : altitude * (both ? made : 1));
    }

    private double eighths(double sigmaTurns) {
        return Math.rint(8 * sigmaTurns * random.nextGaussian()) / 8;
    }

    private void turned(double azimuthTurns, double altitudeTurns) {
        moved(
                azimuthFactor * by(RIG.azimuthScrew(), azimuthTurns),
                altitudeFactor * by(RIG.altitudeScrew(), altitudeTurns));
    }

    private double by(Screw screw, double turns) {
        double slip = turns == 0 ? 0 : screw.handSigmaTurns() * random.nextGaussian();
        return screw.move(turns + slip, axis.axis().altitude()).arcminutes();
    }

    private void moved(double azimuthArcmin, double altitudeArcmin) {
        axis = axis.at(AxisPointing.of(
                axis.axis().azimuth().plus(Angle.ofArcminutes(azimuthArcmin)),
                axis.axis().altitude().plus(Angle.ofArcminutes(altitudeArcmin))));
    }

    private long next() {
        return steps.size() + 2L;
    }
}
