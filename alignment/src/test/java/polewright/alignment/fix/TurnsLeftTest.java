package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The turns that remain, for a live display. */
class TurnsLeftTest {
    /** The typical fork's push screws: 1.25 mm pitch on arms of 200 and 180 mm; clockwise moves right and raises. */
    @ParameterizedTest
    @CsvSource({"54.60, 30, -20", "-43.95, 30, -20", "-43.95, -90, 45"})
    void turnsLeft_areTheMoveOverTheMovePerTurn(double latitudeDeg, double east, double up) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Rig rig = Rig.typicalForkOnWedge();
        AxisPointing now = AxisPointing.of(site, AxisOffset.ofArcminutes(east, up));
        AxisPointing aim = AxisPointing.atPole(site);

        AxisState.Turns left = ScrewGains.ofRig(rig).turnsBetween(now, aim, rig);

        double azimuthPerTurn = Math.toDegrees(Math.atan(1.25 / 200));
        double altitudePerTurn = Math.toDegrees(Math.atan(1.25 / 180));
        assertThat(left.azimuth()).isCloseTo(-now.azimuthError(site).degrees() / azimuthPerTurn, within(1e-9));
        assertThat(left.altitude()).isCloseTo(-now.altitudeError(site).degrees() / altitudePerTurn, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"0.8, 1.1, 0.03, -0.02", "1, 1, 0, 0"})
    void turnsLeft_invertTheLearnedGains(double azimuth, double altitude, double into, double across) {
        Site site = Site.ofDegrees(54.6, 0, 200);
        Rig rig = Rig.typicalForkOnWedge();
        AxisPointing from = AxisPointing.of(site, AxisOffset.ofArcminutes(70, -50));
        AxisPointing to = AxisPointing.atPole(site);

        AxisState.Turns turns = new ScrewGains(azimuth, altitude, into, across, 0.01, 0.01).turnsBetween(from, to, rig);

        Angle asked = rig.azimuthScrew().move(turns.azimuth(), from.altitude());
        Angle raised = rig.altitudeScrew().move(turns.altitude(), from.altitude());
        assertThat(asked.times(azimuth).plus(raised.times(across)).radians())
                .isCloseTo(to.azimuth().minus(from.azimuth()).wrappedSigned().radians(), within(1e-12));
        assertThat(raised.times(altitude).plus(asked.times(into)).radians())
                .isCloseTo(to.altitude().minus(from.altitude()).radians(), within(1e-12));
    }
}
