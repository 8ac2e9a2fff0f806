package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** When a sighting cannot be taken, another is advised. */
class SkippedSightingsTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final Instant SOUTHERN_EVENING = Instant.parse("2026-11-25T10:30:00Z");

    private final List<LoggedEvent> night = new ArrayList<>();
    private Instant now = EVENING;

    private void begin(Site site, Instant at) {
        now = at;
        happened(new NightEvent.Begun(
                "home", site, Weather.standardAt(240), Rig.typicalForkOnWedge(), DiscAllowance.VISUAL));
    }

    private void beginWithGroundRead() {
        begin(LARKFELL, EVENING);
        happened(new NightEvent.SightingTaken(
                new CompassBearing(now, Angle.ofDegrees(2), Angle.ofDegrees(-1), CompassBearing.USUAL_SIGMA)));
        happened(
                new NightEvent.SightingTaken(new LevelledScale(now, Angle.ofDegrees(54.2), LevelledScale.USUAL_SIGMA)));
    }

    private void happened(NightEvent event) {
        night.add(new LoggedEvent(night.size() + 1L, now, event));
    }

    private void skip(Skip.Sighting sighting, Skip.Reason because, String star) {
        happened(
                new NightEvent.SightingSkipped(new Skip(sighting, because, Optional.of(star(star)), Optional.empty())));
    }

    private void without(Skip.Sighting sighting) {
        happened(new NightEvent.SightingSkipped(
                new Skip(sighting, Skip.Reason.NO_INSTRUMENT, Optional.empty(), Optional.empty())));
    }

    private void withoutOptic(String name) {
        happened(new NightEvent.SightingSkipped(
                new Skip(Skip.Sighting.DRIFT, Skip.Reason.NO_OPTIC, Optional.empty(), Optional.of(name))));
    }

    private NightState state() {
        return NightState.of(night, now, new NightState.ModelCache());
    }

    private static SkyBody star(String name) {
        var named = NamedStars.bundled().find(name).orElseThrow();
        return new FixedStar(named.label(), named.place());
    }

    private static List<String> names(NightState state) {
        return state.situation().stars().stream().map(AdvisedStar::name).toList();
    }

    private static AdvisedStar seen(NightState state, String name) {
        return state.situation().stars().stream()
                .filter(star -> star.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void starNotFound_isExcludedAllNight_othersAreNot() {
        beginWithGroundRead();
        List<String> before = names(state());
        assertThat(before).contains("Capella");
        skip(Skip.Sighting.DRIFT, Skip.Reason.NOT_FOUND, "alp Aur");
        assertThat(names(state()))
                .containsExactlyElementsOf(
                        before.stream().filter(name -> !name.equals("Capella")).toList());
        now = now.plus(Duration.ofHours(3));
        assertThat(names(state())).isNotEmpty().doesNotContain("Capella");
    }

    @Test
    void cloud_excludesItsPartOfTheSky_forAnHour() {
        beginWithGroundRead();
        NightState before = state();
        Vector3D capella = seen(before, "Capella").direction().enu();
        skip(Skip.Sighting.DRIFT, Skip.Reason.CLOUD, "Capella");
        NightState after = state();
        assertThat(names(after))
                .containsExactlyElementsOf(before.situation().stars().stream()
                        .filter(star -> Vector3D.angle(star.direction().enu(), capella) > Math.toRadians(30))
                        .map(AdvisedStar::name)
                        .toList())
                .hasSizeLessThan(before.situation().stars().size())
                .isNotEmpty();
        now = now.plus(Duration.ofMinutes(59));
        assertThat(names(state())).doesNotContain("Capella");
        assertThat(state().skipped().stillExcluding(now)).hasSize(1);
        now = now.plus(Duration.ofMinutes(1));
        assertThat(names(state())).contains("Capella");
        assertThat(state().skipped().stillExcluding(now)).isEmpty();
    }

    /** The roof stays where it is, and the stars move out from behind it. */
    @Test
    void roof_excludesStarsBehindAndBelow_untilTheyHaveMoved() {
        beginWithGroundRead();
        NightState before = state();
        AdvisedStar capella = seen(before, "Capella");
        skip(Skip.Sighting.DRIFT, Skip.Reason.HIDDEN, "Capella");
        for (AdvisedStar star : before.situation().stars()) {
            double sideways = Math.abs(star.direction()
                    .azimuth()
                    .minus(capella.direction().azimuth())
                    .wrappedSigned()
                    .degrees());
            double above = star.direction()
                    .altitude()
                    .minus(capella.direction().altitude())
                    .degrees();
            assertThat(names(state()).contains(star.name())).as(star.name()).isEqualTo(sideways >= 10 || above >= 5);
        }
        now = now.plus(Duration.ofHours(2));
        assertThat(names(state())).contains("Capella");
    }

    @Test
    void missingEyepiece_isNotUsedInAdvice() {
        beginWithGroundRead();
        withoutOptic("Reticle");
        assertThat(state().situation().rig().optics()).extracting(Optic::name).containsExactly("finder", "eyepiece");
        withoutOptic("finder");
        withoutOptic("eyepiece");
        assertThat(state().situation().ruledOut())
                .contains(SightingKind.STILL_POINT, SightingKind.DRIFT_EAST_OR_WEST, SightingKind.DRIFT_ON_MERIDIAN);
        assertThat(state().fix().rig().optics()).hasSize(3);
    }

    @Test
    void poleStarOutOfView_isAdvisedAgain_onceTheAxisHasMoved() {
        beginWithGroundRead();
        skip(Skip.Sighting.STILL_POINT, Skip.Reason.NOT_IN_VIEW, "Polaris");
        assertThat(state().situation().ruledOut()).containsExactly(SightingKind.STILL_POINT);
        assertThat(state().skipped().isPoleStarOutOfView()).isTrue();
        happened(new NightEvent.Clamped());
        assertThat(state().skipped().isPoleStarOutOfView()).isTrue();
        happened(new NightEvent.ScrewsTurned(0, 2));
        assertThat(state().situation().ruledOut()).isEmpty();
        assertThat(state().skipped().isPoleStarOutOfView()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"COMPASS, COMPASS, LEVEL_AND_SCALE", "SCALE, LEVEL_AND_SCALE, COMPASS"})
    void missingInstrument_isNotAdvisedAgain(Skip.Sighting sighting, SightingKind skipped, SightingKind next) {
        begin(LARKFELL, Instant.parse("2026-11-25T11:00:00Z"));
        assertThat(state().advice()).isInstanceOf(Advice.TakeSighting.class);
        without(sighting);
        Advice.TakeSighting advised = (Advice.TakeSighting) state().advice();
        assertThat(advised.kind()).isNotEqualTo(skipped);
        without(Skip.Sighting.SHADOW);
        assertThat(((Advice.TakeSighting) state().advice()).kind()).isEqualTo(next);
        without(Skip.Sighting.of(next));
        assertThat(state().advice()).isInstanceOf(Advice.WaitForDark.class);
    }

    /** North and south: one press after another under a sky clouding over, until an hour has passed. */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void skyCloudingOver_eachSkipLeadsElsewhere_andFinallyToWaiting(boolean isNorth) {
        begin(isNorth ? LARKFELL : TUSSOCK_FLAT, isNorth ? EVENING : SOUTHERN_EVENING);
        without(Skip.Sighting.COMPASS);
        without(Skip.Sighting.SCALE);
        Instant first = now;
        int presses = 0;
        while (state().advice() instanceof Advice.TakeSighting take) {
            assertThat(presses++).as("presses until nothing is left").isLessThan(40);
            String star = take.star().orElseThrow().name();
            skip(Skip.Sighting.of(take.kind()), Skip.Reason.CLOUD, star);
            assertThat(names(state())).doesNotContain(star);
            now = now.plusSeconds(20);
        }
        assertThat(presses).isGreaterThan(3);
        assertThat(state().advice())
                .isInstanceOfSatisfying(
                        Advice.WaitForSky.class,
                        wait -> assertThat(wait.lookAgain()).contains(first.plus(Duration.ofHours(1))));
        now = first.plus(Duration.ofHours(1));
        assertThat(state().advice()).isInstanceOf(Advice.TakeSighting.class);
    }

    @Test
    void withoutAnyOptic_adviceIsToWait() {
        begin(LARKFELL, EVENING);
        without(Skip.Sighting.COMPASS);
        without(Skip.Sighting.SCALE);
        List.of("finder", "eyepiece", "reticle").forEach(this::withoutOptic);
        assertThat(state().advice())
                .isInstanceOfSatisfying(
                        Advice.WaitForSky.class,
                        wait -> assertThat(wait.lookAgain()).isEmpty());
    }

    @Test
    void withdrawnSkip_hasNoEffect() {
        beginWithGroundRead();
        Advice before = state().advice();
        Advice.TakeSighting take = (Advice.TakeSighting) before;
        skip(
                Skip.Sighting.of(take.kind()),
                Skip.Reason.NOT_FOUND,
                take.star().orElseThrow().name());
        assertThat(state().advice()).isNotEqualTo(before);
        happened(new NightEvent.Withdrawn(night.size()));
        assertThat(state().advice()).isEqualTo(before);
    }

    @Test
    void skip_doesNotChangeTheFix() {
        beginWithGroundRead();
        var before = state().fix().state();
        skip(Skip.Sighting.DRIFT, Skip.Reason.CLOUD, "Capella");
        assertThat(state().fix().state().axis()).isEqualTo(before.axis());
    }

    @Test
    void reasonThatDoesNotApply_isRefused_listingThoseThatDo() {
        assertThatThrownBy(() -> new Skip(Skip.Sighting.COMPASS, Skip.Reason.CLOUD, Optional.empty(), Optional.empty()))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("'cloud' does not apply to the compass")
                .hasMessageContaining("Give one of: no-instrument");
        assertThatThrownBy(
                        () -> new Skip(Skip.Sighting.DRIFT, Skip.Reason.NOT_FOUND, Optional.empty(), Optional.empty()))
                .hasMessageContaining("the star is missing");
        assertThatThrownBy(
                        () -> new Skip(Skip.Sighting.DRIFT, Skip.Reason.NO_OPTIC, Optional.empty(), Optional.empty()))
                .hasMessageContaining("the optic is missing");
    }
}
