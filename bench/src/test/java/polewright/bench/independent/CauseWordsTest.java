package polewright.bench.independent;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.Sighting;
import polewright.bench.independent.truth.StarInField;
import polewright.mount.rig.Orientation;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

/** The words for common mistakes are still those by which the study recognises them. */
class CauseWordsTest {
    private static final Instant AT = Instant.parse("2026-01-15T20:00:00Z");

    private static boolean isNamedBy(Sighting sighting, Mistake mistake) {
        return sighting.misreadings().stream()
                        .filter(misreading -> CauseWords.name(mistake, misreading.cause(), Optional.empty()))
                        .count()
                == 1;
    }

    private static Sighting sighting(NightEvent event) {
        return ((NightEvent.SightingTaken) event).sighting();
    }

    @Test
    void compass() {
        CompassBearing compass =
                new CompassBearing(AT, Angle.ofDegrees(3), Angle.ofDegrees(-9), CompassBearing.USUAL_SIGMA);
        assertThat(isNamedBy(compass, Mistake.COMPASS_END)).isTrue();
        assertThat(isNamedBy(compass, Mistake.DECLINATION_SIGN)).isTrue();
        assertThat(isNamedBy(compass, Mistake.CLOCK_HOURS)).isFalse();
    }

    @Test
    void driftAndStillPoint() {
        Scene scene = Scene.drawn(4, 50, 1);
        Told stated = Told.truly(scene, new TrueWedge(1, 1).statedByRuler(Orientation.ERECT));
        Sighting drift = sighting(Entries.drift(
                stated, AT, Duration.ofMinutes(5), Catalogue.find("Vega").orElseThrow(), 2, ReticleNorth.SKY));
        assertThat(isNamedBy(drift, Mistake.DRIFT_SIGN)).isTrue();
        Sighting stillPoint =
                sighting(Entries.stillPoint(stated, AT, Catalogue.poleStar(scene.place()), new StarInField(0.2, 3)));
        assertThat(stillPoint.misreadings())
                .anyMatch(misreading -> CauseWords.name(Mistake.VIEW, misreading.cause(), Optional.empty()));
    }
}
