package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.SkySetting;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.Site;

/** A wrong clock or site suggested when an observation is impossible as entered. */
class ClockOrSiteSuspectsTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Site EAST = Site.ofDegrees(43, 80, 200);
    private static final Site WEST = Site.ofDegrees(43, -80, 200);
    // By mean time it is 21:20 at 80 degrees east, and 10:40 at 80 degrees west.
    private static final Instant DARK_IN_THE_EAST = Instant.parse("2026-01-10T16:00:00Z");

    @Test
    void starBelowHorizon_isExplainedByLongitudeSign() {
        StarDrift seen = drift(SkySetting.starAt(EAST, DARK_IN_THE_EAST, -20, 10), DARK_IN_THE_EAST);

        assertThat(ClockOrSiteSuspects.allowing(WEST, RIG, KnownAxis.AIR, List.of(), 2, seen))
                .first()
                .isEqualTo(new Mistake.SiteWrong(EAST, "the site were east of Greenwich"));
    }

    @Test
    void starBelowHorizon_isExplainedByClockOneHourBehind() {
        StarDrift seen = drift(SkySetting.starAt(EAST, DARK_IN_THE_EAST, -95, 5), DARK_IN_THE_EAST);

        assertThat(ClockOrSiteSuspects.allowing(EAST, RIG, KnownAxis.AIR, List.of(), 2, seen))
                .contains(new Mistake.ClockWrong(Duration.ofHours(1), "the clock was 1 hour slow"));
    }

    /** Twelve hours later the star is up, but so is the Sun. */
    @Test
    void starBelowHorizon_isNotExplainedByAClockThatPutsItInDaylight() {
        StarDrift seen = drift(SkySetting.starAt(EAST, DARK_IN_THE_EAST, 175, 0), DARK_IN_THE_EAST);

        assertThat(ClockOrSiteSuspects.allowing(EAST, RIG, KnownAxis.AIR, List.of(), 2, seen))
                .isNotEmpty()
                .noneMatch(mistake -> mistake instanceof Mistake.ClockWrong clock
                        && clock.correction().abs().toHours() > 10);
    }

    @Test
    void darkSkyByDay_isExplainedByLongitudeSign() {
        assertThat(ClockOrSiteSuspects.darkening(WEST, RIG, KnownAxis.AIR, List.of(), DARK_IN_THE_EAST))
                .first()
                .isEqualTo(new Mistake.SiteWrong(EAST, "the site were east of Greenwich"));
    }

    @Test
    void impossibleSighting_lateInALongNight_isNotExplained() {
        Step.Sighted level = Step.Sighted.of(
                2, new LevelledScale(DARK_IN_THE_EAST, Angle.ofDegrees(43), Angle.ofDegrees(1)), WEST, KnownAxis.AIR);
        List<Step> many = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            many.add(level);
        }

        assertThat(ClockOrSiteSuspects.darkening(WEST, RIG, KnownAxis.AIR, many, DARK_IN_THE_EAST))
                .isEmpty();
    }

    /** One day is 3.94 minutes of sidereal time, 0.99°: star bearings reveal it, drifts near the pole do not. */
    @Test
    void dateOneDayBehind_isNamed_fromStarBearings() {
        Site site = Site.ofDegrees(43, 0, 200);
        KnownAxis axis = KnownAxis.exactly(site, AxisOffset.ofArcminutes(20, -10));
        Angle fine = Angle.ofArcminutes(2);
        Angle finest = Angle.ofArcseconds(2);
        List<Sighting> sightings = List.of(
                axis.bearing(fine),
                axis.altitude(fine),
                axis.driftOnMeridian(10, finest),
                axis.driftInEast(10, finest),
                axis.driftInWest(10, finest));
        List<Step> entered = new ArrayList<>();
        sightings.forEach(
                sighting -> entered.add(axis.step(entered.size() + 2L, sighting.movedBy(Duration.ofDays(-1)))));

        Fix fix = FixSolver.solve(site, RIG, KnownAxis.AIR, entered);

        assertThat(fix.explanations().get(0).mistake())
                .contains(new Mistake.ClockWrong(Duration.ofDays(1), "the date was 1 day behind"));
    }

    private static StarDrift drift(FixedStar star, Instant at) {
        return new StarDrift(
                at,
                Duration.ofMinutes(5),
                star,
                ReadLength.ofArcseconds(10),
                new DriftDirection.OnSky(true, ReticleNorth.SKY),
                Angle.ofArcseconds(4));
    }
}
