package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import polewright.sky.place.Site;

class HomePositionTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);

    /** Order, hour angle and cautions: common practice. */
    @Test
    void forkOnWedge_atNorthernSite_readsInFull() {
        assertThat(String.join(
                        "\n", HomePosition.of(MountKind.FORK_ON_WEDGE, LARKFELL).lines()))
                .isEqualTo("""
                           CARE: a tilted fork leans toward the north and can tip the tripod.
                           CARE: spread the legs fully; hang a weight low if it rocks.
                        1. Place the tripod with one leg toward true north.
                        2. Level the base with a bubble, in two directions.
                        3. Tilt the wedge to your latitude, 54.6°, and clamp it.
                           If the scale reads 90 with the plate flat, it shows latitude: set 54.6°.
                           If it reads 0 with the plate flat, it counts from the zenith: set 35.4°.
                        4. Turn the wedge so that its plate faces up toward true north.
                           CARE: a fork and tube are heavy: two people lift, one bolts.
                           CARE: do not let go before every bolt is tight.
                           CARE: from now on, hold the fork's weight whenever you loosen the tilt clamp.
                        5. Bolt the fork to the plate.
                           CARE: hold the tube before you free a clamp.
                           CARE: never near the Sun without a proper filter; by day cap tube and finder.
                        6. Turn the fork until its arms are level, one east, one west.
                           Hour angle 0 h.
                           CARE: a camera at the back may strike the fork's base: swing slowly.
                        7. Turn the tube between the arms until it points up along them.
                           Declination +90°. The tube is parallel to the polar axis.
                        8. Check: bring the declination toward 0°.
                           The tube must swing over the top, toward the south.
                           If it dips down instead, turn the fork half a turn and set +90° again.
                           CARE: mains and dew can kill: a battery is safest.
                           CARE: if mains: a residual-current breaker, dry joints off the ground.
                           CARE: follow local electrical rules.
                        9. Plug in. Leave enough slack in the cables for a full swing.""");
    }

    @ParameterizedTest
    @EnumSource(
            value = MountKind.class,
            names = {"FORK_ON_WEDGE", "GERMAN", "TRACKER"})
    void southernSite_readsLikeTheNorthernOne_withThePolesSwapped(MountKind kind) {
        Site mirrored = Site.ofDegrees(43.95, 170.40, 710);

        String south = text(kind, TUSSOCK_FLAT);

        assertThat(swapped(south).replace("take south from", "take north from")).isEqualTo(text(kind, mirrored));
        assertThat(south).contains("toward true south").doesNotContain("+90°");
    }

    @Test
    void german_hangsTheWeightLow_andMountsTheTubeLast() {
        assertThat(text(MountKind.GERMAN, TUSSOCK_FLAT))
                .contains("Turn the hour axis until the counterweight shaft is at its lowest.")
                .contains("Declination -90°. The tube is parallel to the polar axis.")
                .containsSubsequence("Fit the counterweight", "at its lowest", "Fit the tube", "until its front faces");
    }

    @Test
    void tracker_setsTheAxisAlone() {
        assertThat(text(MountKind.TRACKER, LARKFELL))
                .contains("It may point anywhere; only the axis has a home position.")
                .contains("Nothing may block its view of the north celestial pole.")
                .doesNotContain("Declination");
    }

    @Test
    void uprightFork_isLevelAndFacesNorth_inBothHemispheres() {
        for (Site site : new Site[] {LARKFELL, TUSSOCK_FLAT}) {
            assertThat(text(MountKind.FORK_UPRIGHT, site))
                    .contains("Turn the fork until the tube faces true north. Azimuth 0°.")
                    .contains("Set the tube level. Altitude 0°.")
                    .doesNotContain("true south");
        }
    }

    /** The Sun's declination reaches 23.44°: south of that tropic it can culminate north of the zenith. */
    @Test
    void uprightFork_warnsOfTheNoonSun_ifItCanBeInTheNorth() {
        String caution = "CARE: the noon Sun can be in the north here, where the tube will face.";
        assertThat(text(MountKind.FORK_UPRIGHT, TUSSOCK_FLAT)).contains(caution);
        assertThat(text(MountKind.FORK_UPRIGHT, Site.ofDegrees(20, 0, 0))).contains(caution);
        assertThat(text(MountKind.FORK_UPRIGHT, Site.ofDegrees(25, 0, 0))).doesNotContain(caution);
    }

    @ParameterizedTest
    @EnumSource(MountKind.class)
    void everyKind_warnsOfTheSunBeforeATubeSwings_andOfMainsBeforePluggingIn(MountKind kind) {
        for (Site site : new Site[] {LARKFELL, TUSSOCK_FLAT}) {
            assertThat(text(kind, site))
                    .contains("CARE: never near the Sun without a proper filter")
                    .containsSubsequence("CARE: mains and dew can kill", ". Plug in.");
        }
    }

    @ParameterizedTest
    @EnumSource(MountKind.class)
    void everyLineFitsATerminal_atAnyLatitude(MountKind kind) {
        for (double latitude = -90; latitude <= 90; latitude += 2.5) {
            assertThat(HomePosition.of(kind, Site.ofDegrees(latitude, 0, 0)).lines())
                    .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        }
    }

    @Test
    void scaleFiguresAddUpToNinety_howeverTheyRound() {
        assertThat(text(MountKind.FORK_ON_WEDGE, Site.ofDegrees(44.96, 0, 0)))
                .contains("shows latitude: set 45.0°.")
                .contains("counts from the zenith: set 45.0°.");
        assertThat(text(MountKind.FORK_ON_WEDGE, Site.ofDegrees(-33.25, 0, 0)))
                .contains("shows latitude: set 33.3°.")
                .contains("counts from the zenith: set 56.7°.");
    }

    @Test
    void latitudesBeyondTheUsualRangeOfWedges_areNoted() {
        String remark = "Many mounts do not tilt that far. Never force one past its stop.";
        assertThat(text(MountKind.FORK_ON_WEDGE, Site.ofDegrees(5, 0, 0))).contains(remark);
        assertThat(text(MountKind.FORK_ON_WEDGE, Site.ofDegrees(-70, 0, 0))).contains(remark);
        assertThat(text(MountKind.FORK_ON_WEDGE, LARKFELL)).doesNotContain(remark);
    }

    @Test
    void nearThePole_theCompassIsRuledOut() {
        assertThat(text(MountKind.GERMAN, Site.ofDegrees(-88, 0, 0)))
                .contains("No compass works this close to the pole. Find north by the Sun or a star.");
    }

    private static String text(MountKind kind, Site site) {
        return String.join("\n", HomePosition.of(kind, site).lines());
    }

    private static String swapped(String text) {
        return text.replace("south", "~")
                .replace("north", "south")
                .replace("~", "north")
                .replace("-90°", "+90°");
    }
}
