package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.operations.CommandRun;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStar;
import polewright.planning.tonight.AlignmentStars;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.NightPlan;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.StarMove;
import polewright.planning.tonight.StarSurroundings;
import polewright.planning.tonight.Target;
import polewright.planning.tonight.TonightsPlan;
import polewright.report.text.StarFindingWords;
import polewright.report.text.SunCaution;
import polewright.report.text.TonightWords;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.daylight.Instrument;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * By day nothing within 30° of the Sun is named without a caution: 100 random dates and eight days of solar eclipses
 * at eight sites in both hemispheres, with the Sun from Skyfield.
 */
@Tag("slow")
class SunAgainstSkyfieldTest {
    // Sun and star positions are each accurate to a few arcseconds; the table has five decimals.
    private static final double KEEP_AWAY_DEG = 29.98;
    private static final double STEP_DEG = 1;

    private static final Map<Evening, AlignmentOutcome> OUTCOMES = new HashMap<>();

    @TempDir
    private Path folder;

    private static List<SunPlaces.Row> byDay() {
        return SunPlaces.all().stream().filter(SunPlaces.Row::isSunUp).toList();
    }

    /** The rows for which the complete command is run: one site per random date and two per eclipse, in rotation. */
    private static List<SunPlaces.Row> chosen() {
        List<SunPlaces.Row> all = SunPlaces.all();
        assertThat(all).hasSize(108 * 8);
        return Stream.iterate(0, i -> i < all.size(), i -> i + 1)
                .filter(i -> (i / 8 + 1) % 8 == i % 8 || (all.get(i).isEclipse() && (i / 8 + 5) % 8 == i % 8))
                .map(all::get)
                .toList();
    }

    @Test
    void alignmentStarsAndNeighbours_avoidTheSun_andTheCautionIsGiven() {
        int stars = 0;
        for (SunPlaces.Row row : chosen()) {
            if (!row.isSunUp()) {
                continue;
            }
            Evening evening = row.evening(Rig.typicalForkOnWedge());
            AlignmentOutcome outcome = outcome(evening);
            List<String> text = new StarFindingWords(evening, ZoneOffset.UTC, 200, true).of(outcome, 3);
            assertThat(text).as("%s", row).anyMatch(line -> line.startsWith("CARE  The Sun is up."));
            if (outcome instanceof AlignmentOutcome.Chosen chosen) {
                for (AlignmentStar star : chosen.stars()) {
                    stars++;
                    assertThat(row.fromEdgeDeg(star.seen().airless()))
                            .as("%s: %s", row, star.seen().name())
                            .isGreaterThan(KEEP_AWAY_DEG);
                    neighbours(star.around())
                            .forEach(name -> assertThat(row.fromEdgeDeg(direction(name, evening)))
                                    .as(
                                            "%s: %s, named at %s",
                                            row, name, star.seen().name())
                                    .isGreaterThan(KEEP_AWAY_DEG));
                }
            }
        }
        assertThat(stars).isGreaterThan(100);
    }

    /** Computed once for all tests: each looks a day ahead for the time when stars become visible. */
    private static AlignmentOutcome outcome(Evening evening) {
        return OUTCOMES.computeIfAbsent(
                evening, asked -> AlignmentStars.of(asked, 3, Instrument.forFinding(200), Optional.empty()));
    }

    private static Stream<String> neighbours(StarSurroundings around) {
        return Stream.of(around.guides(), around.lookalikes(), around.planets())
                .flatMap(List::stream)
                .map(StarSurroundings.Neighbour::name);
    }

    private static AirlessDirection direction(String name, Evening evening) {
        SkyBody body = Stream.of(SolarSystemBody.values())
                .filter(planet -> planet.label().equals(name))
                .map(SkyBody.class::cast)
                .findFirst()
                .orElseGet(() ->
                        new FixedStar(name, NamedStars.bundled().named(name).place()));
        ObservingMoment moment = evening.moment(evening.now());
        return moment.airless(Ephemeris.apparent(body, moment));
    }

    /**
     * With any timing of the two drives. If that passes too near the Sun, one axis moves first and the text says why.
     */
    @Test
    void slewsBetweenSuggestedStars_avoidTheSun_orSayWhichAxisMovesFirst() {
        Rig wedge = Rig.typicalForkOnWedge();
        Rig upright = new Rig(
                wedge.name(),
                MountKind.FORK_UPRIGHT,
                wedge.azimuthScrew(),
                wedge.altitudeScrew(),
                wedge.levelSigma(),
                wedge.clampSigma(),
                wedge.optics());
        int slews = 0;
        for (SunPlaces.Row row : chosen()) {
            for (Rig rig : row.isEclipse() ? List.of(wedge, upright) : List.of(wedge)) {
                Evening evening = row.evening(rig);
                if (!row.isSunUp() || !(outcome(evening) instanceof AlignmentOutcome.Chosen chosen)) {
                    continue;
                }
                String text = String.join("\n", new StarFindingWords(evening, ZoneOffset.UTC, 200, true).of(chosen, 3));
                slews += follow(row, evening, rig.kind().hasPolarAxis(), chosen, text);
            }
        }
        assertThat(slews).isGreaterThan(100);
    }

    private static int follow(
            SunPlaces.Row row, Evening evening, boolean isPolar, AlignmentOutcome.Chosen chosen, String text) {
        ObservingMoment moment = evening.moment(evening.now());
        double lower = 0;
        double upper = isPolar ? 90 * row.site().hemisphereSign() : 0;
        for (AlignmentStar star : chosen.stars()) {
            double turn = star.move().longitude().degrees();
            double tilt = star.move().latitude().degrees();
            String name = row + ": to " + star.seen().name();
            double[] begin = {lower, upper};
            double[] end = {lower + turn, upper + tilt};
            if (star.move().order() == StarMove.Order.BOTH_TOGETHER) {
                double rate = Math.max(Math.abs(turn), Math.abs(tilt));
                assertAvoidsSun(
                        row,
                        name,
                        rate,
                        share -> fromAxes(
                                moment,
                                isPolar,
                                begin[0] + limited(turn, share * rate),
                                begin[1] + limited(tilt, share * rate)));
                assertAvoidsSun(
                        row,
                        name,
                        rate,
                        share -> fromAxes(moment, isPolar, begin[0] + share * turn, begin[1] + share * tilt));
                assertOtherMotionAvoidsSun(row, name, moment, isPolar, begin, end);
            } else {
                assertThat(text).as(name).contains("only then", "to keep away from the Sun");
                boolean isLowerFirst = star.move().order() == StarMove.Order.LOWER_AXIS_FIRST;
                double[] corner = isLowerFirst ? new double[] {end[0], begin[1]} : new double[] {begin[0], end[1]};
                assertAvoidsSunBetween(row, name, moment, isPolar, begin, corner);
                assertAvoidsSunBetween(row, name, moment, isPolar, corner, end);
            }
            lower = end[0];
            upper = end[1];
        }
        return chosen.stars().size();
    }

    private static void assertAvoidsSunBetween(
            SunPlaces.Row row, String name, ObservingMoment moment, boolean isPolar, double[] from, double[] to) {
        assertAvoidsSun(
                row,
                name,
                180,
                share -> fromAxes(
                        moment, isPolar, from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])));
    }

    /**
     * The other kind of motion: azimuth and altitude for a mount on a wedge, hour angle and declination for an upright
     * one.
     */
    private static void assertOtherMotionAvoidsSun(
            SunPlaces.Row row, String name, ObservingMoment moment, boolean isPolar, double[] begin, double[] end) {
        AirlessDirection from = fromAxes(moment, isPolar, begin[0], begin[1]);
        AirlessDirection to = fromAxes(moment, isPolar, end[0], end[1]);
        if (isPolar) {
            double turn = to.azimuth().minus(from.azimuth()).wrappedSigned().degrees();
            double tilt = to.altitude().degrees() - from.altitude().degrees();
            assertAvoidsSun(
                    row,
                    name,
                    180,
                    share -> AirlessDirection.of(
                            Angle.ofDegrees(from.azimuth().degrees() + share * turn),
                            Angle.ofDegrees(from.altitude().degrees() + share * tilt)));
        } else {
            HourAnglePlace first = moment.hourAngle(from);
            HourAnglePlace last = moment.hourAngle(to);
            double turn =
                    last.hourAngle().minus(first.hourAngle()).wrappedSigned().degrees();
            double tilt = last.declination().degrees() - first.declination().degrees();
            assertAvoidsSun(
                    row,
                    name,
                    180,
                    share -> fromAxes(
                            moment,
                            true,
                            first.hourAngle().degrees() + share * turn,
                            first.declination().degrees() + share * tilt));
        }
    }

    private interface Way {
        AirlessDirection at(double share);
    }

    private static void assertAvoidsSun(SunPlaces.Row row, String name, double lengthDeg, Way way) {
        int steps = (int) Math.ceil(lengthDeg / STEP_DEG) + 1;
        double nearest = 180;
        for (int i = 0; i <= steps; i++) {
            nearest = Math.min(nearest, row.fromEdgeDeg(way.at(i / (double) steps)));
        }
        assertThat(nearest).as(name).isGreaterThan(KEEP_AWAY_DEG - 0.02);
    }

    private static double limited(double whole, double turned) {
        return Math.copySign(Math.min(Math.abs(whole), turned), whole);
    }

    private static AirlessDirection fromAxes(
            ObservingMoment moment, boolean isPolar, double lowerDeg, double upperDeg) {
        Angle lower = Angle.ofDegrees(lowerDeg);
        Angle upper = Angle.ofDegrees(upperDeg);
        return isPolar ? moment.airless(new HourAnglePlace(lower, upper)) : AirlessDirection.of(lower, upper);
    }

    @Test
    void chartNearTheSunByDay_hasItsCaution() {
        int near = 0;
        for (SunPlaces.Row row : byDay()) {
            ObservingMoment moment = row.evening(Rig.typicalForkOnWedge()).moment(row.at());
            near += assertCautionMatches(row, moment, SolarSystemBody.MERCURY, row.mercuryDeg()) ? 1 : 0;
            near += assertCautionMatches(row, moment, SolarSystemBody.VENUS, row.venusDeg()) ? 1 : 0;
        }
        assertThat(near).isGreaterThan(300);
    }

    private static boolean assertCautionMatches(
            SunPlaces.Row row, ObservingMoment moment, SolarSystemBody body, double sunDeg) {
        boolean isCautioned =
                !SunCaution.near(moment, Ephemeris.apparent(body, moment)).isEmpty();
        // The angular radius of the Sun is 0.262° to 0.272°.
        if (sunDeg - 0.262 < 29.99) {
            assertThat(isCautioned).as("%s: %s", row, body.label()).isTrue();
        } else if (sunDeg - 0.272 > 30.01) {
            assertThat(isCautioned).as("%s: %s", row, body.label()).isFalse();
        }
        return isCautioned;
    }

    /** The Moon is in front of the Sun; no star hop leads there. */
    @Test
    void chartOfTheMoonDuringAnEclipse_warnsOfTheSun() {
        List<SunPlaces.Row> eclipses =
                byDay().stream().filter(SunPlaces.Row::isEclipse).toList();
        assertThat(eclipses).hasSizeGreaterThan(20);
        for (int i = 0; i < eclipses.size(); i += 5) {
            SunPlaces.Row row = eclipses.get(i);
            String text = new CommandRun(folder, row.at().toString())
                    .good("chart", "moon", "--site", row.siteOption())
                    .out();
            if (!text.contains("below the horizon")) {
                assertThat(text)
                        .as("%s", row)
                        .containsPattern("CARE {2}Only [0-9.]+° from the Sun, which is up")
                        .contains("CARE  The Sun is up")
                        .doesNotContain("From ");
            }
        }
    }

    @Test
    void tonight_avoidsDaylight_andHalfAnHourAroundSunsetAndSunrise() {
        int slots = 0;
        // Solar-system bodies come first in the lists; adding a few objects lets the plan wait for darkness.
        List<Target> targets = Target.ofLists().stream()
                .filter(target -> target.body() instanceof SolarSystemBody
                        || target.magnitude().orElse(99) < 4)
                .limit(16)
                .toList();
        for (SunPlaces.Row row : chosen()) {
            if (row.night().isEmpty()) {
                continue;
            }
            SunPlaces.Night night = row.night().get();
            Evening evening = row.evening(Rig.typicalForkOnWedge());
            TonightsPlan plan = TonightsPlan.usual(
                    evening, Observing.of(evening.rig(), Optional.empty(), Optional.empty()), targets);
            for (NightPlan.Slot slot : plan.plan().slots()) {
                slots++;
                assertClearOfTheSun(row, night, slot.when(), slot.showing().target());
            }
            plan.others()
                    .forEach(other ->
                            assertClearOfTheSun(row, night, new Interval(other.best(), other.best()), other.target()));
            long cautions = new TonightWords(plan, ZoneOffset.UTC)
                    .all().stream().filter(line -> line.startsWith("CARE")).count();
            assertThat(cautions)
                    .as("%s", row)
                    .isEqualTo(plan.sunCautions().size())
                    .isLessThanOrEqualTo(2);
            plan.sunCautions().forEach(caution -> {
                Instant at = switch (caution.crossing()) {
                    case SETS -> night.sunset();
                    case RISES -> night.sunrise();
                };
                assertThat(Duration.between(at, caution.at()).toSeconds())
                        .as("%s: %s", row, caution.crossing())
                        .isCloseTo(0, within(60L));
            });
        }
        assertThat(slots).isGreaterThan(300);
    }

    private static void assertClearOfTheSun(SunPlaces.Row row, SunPlaces.Night night, Interval when, Target target) {
        String name = row + ": " + target.label() + " " + when;
        // The sunsets of two ephemerides differ by seconds, and by more near the polar circle.
        long tolerance = 45;
        assertThat(Duration.between(night.sunset(), when.from()).toSeconds())
                .as(name)
                .isGreaterThan(1800 - tolerance);
        assertThat(Duration.between(when.to(), night.sunrise()).toSeconds())
                .as(name)
                .isGreaterThan(1800 - tolerance);
    }
}
