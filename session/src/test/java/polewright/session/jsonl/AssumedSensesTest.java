package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import polewright.mount.rig.Rig;

/** Whether a stored rig states the directions of its screws, or only assumes them. */
class AssumedSensesTest {
    private static final String AZIMUTH =
            "\"azimuth_screw\":{\"geometry\":{\"kind\":\"push_screw\",\"thread_pitch_mm\":1.25,\"arm_mm\":200},"
                    + "\"clockwise\":\"right\",\"gain_sigma_fraction\":0.15,\"hand_sigma_turns\":0.05,"
                    + "\"backlash_turns\":0.1,\"finish\":\"either\"}";
    private static final String ALTITUDE =
            "\"altitude_screw\":{\"geometry\":{\"kind\":\"push_screw\",\"thread_pitch_mm\":1.25,\"arm_mm\":180},"
                    + "\"clockwise\":\"raises\",\"gain_sigma_fraction\":0.15,\"hand_sigma_turns\":0.05,"
                    + "\"backlash_turns\":0.1,\"finish\":\"either\"}";
    private static final String LEARNED =
            ",\"learned\":{\"nights\":3,\"azimuth_factor\":1,\"azimuth_factor_sigma\":0.05,"
                    + "\"altitude_factor\":1,\"altitude_factor_sigma\":0.05,\"clampings\":0,\"clamp_east_arcmin\":0,"
                    + "\"clamp_up_arcmin\":0,\"clamp_sigma_arcmin\":1}";

    private static Rig read(String azimuth, String altitude, String more) {
        return RigText.read("{\"name\":\"fork\",\"kind\":\"fork_on_wedge\"," + azimuth + "," + altitude
                + ",\"level_sigma_deg\":1.5,\"clamp_sigma_arcmin\":1.5" + more + "}");
    }

    private static void assertAssumed(Rig rig, boolean azimuth, boolean altitude) {
        assertThat(rig.azimuthScrew().isSenseAssumed()).isEqualTo(azimuth);
        assertThat(rig.altitudeScrew().isSenseAssumed()).isEqualTo(altitude);
    }

    @Test
    void olderLog_withTheScrewsOfTheAssumedFork_assumesBoth() {
        assertAssumed(read(AZIMUTH, ALTITUDE, ""), true, true);
    }

    @Test
    void olderLog_withOneDifferentScrew_knowsBoth() {
        assertAssumed(read(AZIMUTH, ALTITUDE.replace("180", "181"), ""), false, false);
        assertAssumed(read(AZIMUTH.replace("right", "left"), ALTITUDE, ""), false, false);
    }

    @Test
    void olderLog_withExperience_knowsBoth() {
        assertAssumed(read(AZIMUTH, ALTITUDE, LEARNED), false, false);
    }

    @Test
    void newerLog_statesItForEachScrew() {
        String assumed = ALTITUDE.replace("\"either\"", "\"either\",\"clockwise_assumed\":true");
        String told = ALTITUDE.replace("\"either\"", "\"either\",\"clockwise_assumed\":false");
        assertAssumed(read(AZIMUTH, assumed, ""), false, true);
        assertAssumed(read(AZIMUTH, told, ""), false, false);
        assertAssumed(read(AZIMUTH, assumed, LEARNED), false, true);
        assertThat(read(AZIMUTH, assumed, LEARNED).experience().orElseThrow().altitudeSense())
                .isEqualTo(0.5);
    }
}
