package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.CompassBearing;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Anything entered under a correction was derived from it: withdrawing the correction changes that too. */
class WithdrawnSetupCorrectionTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site WRONG = Site.ofDegrees(54.60, 2.90, 240);

    private static List<LoggedEvent> night(NightEvent... events) {
        List<LoggedEvent> night = new ArrayList<>(List.of(new LoggedEvent(
                1,
                EVENING,
                new NightEvent.Begun(
                        "Larkfell",
                        LARKFELL,
                        Weather.standardAt(240),
                        Rig.typicalForkOnWedge(),
                        DiscAllowance.VISUAL))));
        for (NightEvent event : events) {
            night.add(new LoggedEvent(night.size() + 1L, EVENING.plusSeconds(60L * night.size()), event));
        }
        return night;
    }

    /** With the model's declination for the site. */
    private static NightEvent compassAt(Site site) {
        return new NightEvent.SightingTaken(new CompassBearing(
                EVENING,
                Angle.ofDegrees(2),
                MagneticModel.wmm2025().field(site, EVENING).declination(),
                CompassBearing.USUAL_SIGMA));
    }

    private static NightEvent compassReadIn(List<LoggedEvent> night) {
        return NightState.of(night).standing().get(1).event();
    }

    @Test
    void sightingUnderAWithdrawnSiteCorrection_isConvertedToTheStandingSite() {
        List<LoggedEvent> night =
                night(new Correction.SiteCorrected(WRONG), compassAt(WRONG), new NightEvent.Withdrawn(2));

        assertThat(compassReadIn(night.subList(0, 3))).isEqualTo(compassAt(WRONG));
        assertThat(compassReadIn(night)).isEqualTo(compassAt(LARKFELL));
    }

    @Test
    void withdrawnWithdrawal_convertsItToTheCorrectedSiteAgain() {
        List<LoggedEvent> night = night(
                new Correction.SiteCorrected(WRONG),
                compassAt(WRONG),
                new NightEvent.Withdrawn(2),
                new NightEvent.Withdrawn(4));

        assertThat(compassReadIn(night)).isEqualTo(compassAt(WRONG));
    }

    @Test
    void sightingAfterTheWithdrawal_isUnchanged() {
        List<LoggedEvent> night =
                night(new Correction.SiteCorrected(WRONG), new NightEvent.Withdrawn(2), compassAt(LARKFELL));

        assertThat(compassReadIn(night)).isEqualTo(compassAt(LARKFELL));
    }

    @Test
    void growingNight_givesTheSameResult() {
        List<LoggedEvent> night =
                night(new Correction.SiteCorrected(WRONG), compassAt(WRONG), new NightEvent.Withdrawn(2));
        NightState.ModelCache models = new NightState.ModelCache();
        NightState grown = NightState.of(night.subList(0, 1), EVENING, models);
        for (int events = 2; events <= night.size(); events++) {
            grown = NightState.of(night.subList(0, events), EVENING, models);
        }

        assertThat(grown.standing().get(1).event()).isEqualTo(compassAt(LARKFELL));
    }
}
