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
 * Nothing is named within 30° of the Sun by day without its caution: 100 random dates and eight days of solar eclipses at
 * eight sites in both hemispheres, the Sun by Skyfield.
 */
@Tag("slow")
class SunAgainstSkyfieldTest {
    // Sun and star are each good to some arcseconds; the table has five decimals.
    private static final double KEEP_AWAY_DEG = 29.98;
    private static final double STEP_DEG = 1;

    private static final Map<Evening, AlignmentOutcome> OUTCOMES = new HashMap<>();

    @TempDir
    private Path folder;

    private static List<SunPlaces.Row> byDay() {
        return SunPlaces.all().stream().filter(SunPlaces.Row::isSunUp).toList();
    }

    /** Those for which the whole of a command is worked out: one site a random date, two of an eclipse, in rotation. */
    private static List<SunPlaces.Row> chosen() {
        List<SunPlaces.Row> all = SunPlaces.all();
        assertThat(all).hasSize(108 * 8);
        return Stream.iterate(0, i -> i < all.size(), i -> i + 1)
                .filter(i -> (i / 8 + 1) % 8 == i % 8 || (all.get(i).isEclipse() && (i / 8 + 5) % 8 == i % 8))
                .map(all::get)
                .toList();
    }

    @Test
    void alignmentStarsAndTheirNeighboursKeepAwayFromTheSun_andTheCautionIsSaid() {
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

    /** Worked out once for all tests: each looks a day ahead for when stars come out. */
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

    /** However the drives share the time; where that is too near, one axis turns first and the text says why. */
    @Test
    void slewsBetweenSuggestedStarsKeepAwayFromTheSun_orSayWhichAxisComesFirst() {
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
                keepsAway(
                        row,
                        name,
                        rate,
                        share -> own(
                                moment,
                                isPolar,
                                begin[0] + upTo(turn, share * rate),
                                begin[1] + upTo(tilt, share * rate)));
                keepsAway(
                        row,
                        name,
                        rate,
                        share -> own(moment, isPolar, begin[0] + share * turn, begin[1] + share * tilt));
                otherWay(row, name, moment, isPolar, begin, end);
            } else {
                assertThat(text).as(name).contains("only then", "to keep away from the Sun");
                boolean isLowerFirst = star.move().order() == StarMove.Order.LOWER_AXIS_FIRST;
                double[] corner = isLowerFirst ? new double[] {end[0], begin[1]} : new double[] {begin[0], end[1]};
                keepsAwayBetween(row, name, moment, isPolar, begin, corner);
                keepsAwayBetween(row, name, moment, isPolar, corner, end);
            }
            lower = end[0];
            upper = end[1];
        }
        return chosen.stars().size();
    }

    private static void keepsAwayBetween(
            SunPlaces.Row row, String name, ObservingMoment moment, boolean isPolar, double[] from, double[] to) {
        keepsAway(
                row,
                name,
                180,
                share ->
                        own(moment, isPolar, from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])));
    }

    /** A mount on a wedge in azimuth and altitude, one set upright in hour angle and declination. */
    private static void otherWay(
            SunPlaces.Row row, String name, ObservingMoment moment, boolean isPolar, double[] begin, double[] end) {
        AirlessDirection from = own(moment, isPolar, begin[0], begin[1]);
        AirlessDirection to = own(moment, isPolar, end[0], end[1]);
        if (isPolar) {
            double turn = to.azimuth().minus(from.azimuth()).wrappedSigned().degrees();
            double tilt = to.altitude().degrees() - from.altitude().degrees();
            keepsAway(
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
            keepsAway(
                    row,
                    name,
                    180,
                    share -> own(
                            moment,
                            true,
                            first.hourAngle().degrees() + share * turn,
                            first.declination().degrees() + share * tilt));
        }
    }

    private interface Way {
        AirlessDirection at(double share);
    }

    private static void keepsAway(SunPlaces.Row row, String name, double lengthDeg, Way way) {
        int steps = (int) Math.ceil(lengthDeg / STEP_DEG) + 1;
        double nearest = 180;
        for (int i = 0; i <= steps; i++) {
            nearest = Math.min(nearest, row.fromEdgeDeg(way.at(i / (double) steps)));
        }
        assertThat(nearest).as(name).isGreaterThan(KEEP_AWAY_DEG - 0.02);
    }

    private static double upTo(double whole, double turned) {
        return Math.copySign(Math.min(Math.abs(whole), turned), whole);
    }

    private static AirlessDirection own(ObservingMoment moment, boolean isPolar, double lowerDeg, double upperDeg) {
        Angle lower = Angle.ofDegrees(lowerDeg);
        Angle upper = Angle.ofDegrees(upperDeg);
        return isPolar ? moment.airless(new HourAnglePlace(lower, upper)) : AirlessDirection.of(lower, upper);
    }

    @Test
    void aChartOfWhatIsNearTheSunByDayHasItsCaution() {
        int near = 0;
        for (SunPlaces.Row row : byDay()) {
            ObservingMoment moment = row.evening(Rig.typicalForkOnWedge()).moment(row.at());
            near += cautioned(row, moment, SolarSystemBody.MERCURY, row.mercuryDeg()) ? 1 : 0;
            near += cautioned(row, moment, SolarSystemBody.VENUS, row.venusDeg()) ? 1 : 0;
        }
        assertThat(near).isGreaterThan(300);
    }

    private static boolean cautioned(SunPlaces.Row row, ObservingMoment moment, SolarSystemBody body, double sunDeg) {
        boolean isSaid =
                !SunCaution.near(moment, Ephemeris.apparent(body, moment)).isEmpty();
        // The Sun's edge is 0.262° to 0.272° from its centre.
        if (sunDeg - 0.262 < 29.99) {
            assertThat(isSaid).as("%s: %s", row, body.label()).isTrue();
        } else if (sunDeg - 0.272 > 30.01) {
            assertThat(isSaid).as("%s: %s", row, body.label()).isFalse();
        }
        return isSaid;
    }

    /** The Moon is in front of it; no star leads there. */
    @Test
    void theChartOfTheMoonOnTheDayOfAnEclipseSaysSo() {
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
    void tonightAdvisesNothingByDay_norWithinHalfAnHourOfSunsetOrSunrise() {
        int slots = 0;
        // The bodies come first in the lists; a few objects let the plan wait for the dark.
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
                isClear(row, night, slot.when(), slot.showing().target());
            }
            plan.others()
                    .forEach(other -> isClear(row, night, new Interval(other.best(), other.best()), other.target()));
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

    private static void isClear(SunPlaces.Row row, SunPlaces.Night night, Interval when, Target target) {
        String name = row + ": " + target.label() + " " + when;
        // Two ephemerides' sunsets differ by seconds, near the polar circle by more.
        long tolerance = 45;
        assertThat(Duration.between(night.sunset(), when.from()).toSeconds())
                .as(name)
                .isGreaterThan(1800 - tolerance);
        assertThat(Duration.between(when.to(), night.sunrise()).toSeconds())
                .as(name)
                .isGreaterThan(1800 - tolerance);
    }
}
