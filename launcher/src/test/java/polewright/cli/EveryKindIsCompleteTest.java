package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.SightingKind;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CentredStars;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StarTrail;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.operations.input.BodyFinder;
import polewright.report.json.NightJson;
import polewright.report.text.EventWords;
import polewright.report.text.Remark;
import polewright.report.text.SunCaution;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.form.NightForms;
import polewright.web.form.SetupForms;
import polewright.web.form.SightingForms;
import polewright.web.form.WorkForms;
import polewright.web.page.Sketches;
import polewright.web.view.Section;

/**
 * Java 17 does not notice if a chain of {@code instanceof} misses a case. Each kind of sighting and event is checked
 * here for everything it must have; a new kind fails until it is complete.
 */
class EveryKindIsCompleteTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant NOON = Instant.parse("2026-06-21T12:00:00Z");
    private static final Angle FINE = Angle.ofArcminutes(1);
    private static final Path DOCS = Path.of("..", "docs");

    /** All concrete types of a sealed hierarchy. */
    private static Stream<Class<?>> leaves(Class<?> sealed) {
        return sealed.isSealed()
                ? Arrays.stream(sealed.getPermittedSubclasses()).flatMap(EveryKindIsCompleteTest::leaves)
                : Stream.of(sealed);
    }

    /** A star or camera direction ten degrees from the Sun. */
    private static FixedStar starNearTheSun() {
        ObservingMoment noon = ObservingMoment.of(LARKFELL, SkyTime.of(NOON), Weather.standardAt(240));
        CatalogueStar sun = noon.catalogueDirection(Ephemeris.apparent(SolarSystemBody.SUN, noon));
        return new FixedStar(
                "a star",
                CatalogueStar.fixed(sun.rightAscension(), sun.declination().plus(Angle.ofDegrees(10))));
    }

    private static TurnedFrames framesOf(FixedStar star) {
        ObservingMoment noon = ObservingMoment.of(LARKFELL, SkyTime.of(NOON), Weather.standardAt(240));
        Vector3D toward = noon.airless(Ephemeris.apparent(star, noon)).enu();
        Rotation first = new Rotation(Vector3D.PLUS_K, toward);
        Rotation turn = new Rotation(toward, Math.toRadians(40), RotationConvention.VECTOR_OPERATOR);
        RotationCovariance covariance = new RotationCovariance(1, 0, 0, 1, 0, 1);
        return TurnedFrames.of(
                List.of(
                        CameraAttitude.of(NOON, first, covariance),
                        CameraAttitude.of(NOON.plusSeconds(60), turn.applyTo(first), covariance)),
                Drive.NOT_TOLD);
    }

    /** One of each sighting that looks at the sky, ten degrees from the Sun. */
    private static List<Sighting> sightingsNearTheSun() {
        FixedStar star = starNearTheSun();
        Angle ten = Angle.ofDegrees(10);
        return List.of(
                new CompassBearing(NOON, ten, Angle.ZERO, Angle.ofDegrees(3)),
                new LevelledScale(NOON, Angle.ofDegrees(54), Angle.ofDegrees(1)),
                new BodyBearing(NOON, star, BodyBearing.Line.TOWARD_BODY, ten, Angle.ofDegrees(1)),
                new BodyAltitude(NOON, star, ten, Angle.ofDegrees(1)),
                new StillPoint(
                        NOON,
                        star,
                        ReadLength.ofField(0.2, Angle.ofDegrees(6)),
                        new ClockDirection(4),
                        new View(Orientation.ERECT, Angle.ZERO),
                        FINE),
                new StarDrift(
                        NOON,
                        Duration.ofMinutes(5),
                        star,
                        ReadLength.ofField(0.1, Angle.ofDegrees(1)),
                        new DriftDirection.OnSky(true),
                        FINE),
                new StarTrail(NOON, star, FINE, FINE),
                framesOf(star),
                new FieldDrift(
                        NOON,
                        Duration.ofMinutes(5),
                        star.star().rightAscension(),
                        star.star().declination(),
                        FINE,
                        FINE,
                        FINE,
                        FINE),
                new CentredStars(MountKind.FORK_ON_WEDGE, List.of(centred(star))));
    }

    private static CentredStar centred(FixedStar star) {
        return new CentredStar(NOON, star, new MountDisplay.HourAngle(Angle.ZERO, Angle.ZERO), false, FINE);
    }

    @Test
    void sightingNearTheSun_bringsItsCaution() {
        List<Class<?>> notTowardTheSky = List.of(CompassBearing.class, LevelledScale.class);
        List<Sighting> sightings = sightingsNearTheSun();
        assertThat(sightings)
                .extracting(Object::getClass)
                .containsAll(leaves(Sighting.class).toList());
        for (Sighting sighting : sightings) {
            assertThat(SunCaution.of(new NightEvent.SightingTaken(sighting), LARKFELL))
                    .as(sighting.kind())
                    .hasSize(notTowardTheSky.contains(sighting.getClass()) ? 0 : 1)
                    .allMatch(remark -> remark.isCaution() && remark.text().startsWith("Only 10"));
        }
    }

    @Test
    void shadow_needsNoCaution_becauseTheSunIsBehindTheObserver() {
        Sighting shadow = new BodyBearing(
                NOON, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, Angle.ofDegrees(10), Angle.ofDegrees(1));
        assertThat(SunCaution.of(new NightEvent.SightingTaken(shadow), LARKFELL))
                .isEmpty();
    }

    @Test
    void centringNearTheSun_bringsItsCaution() {
        assertThat(SunCaution.of(new NightEvent.StarCentred(centred(starNearTheSun())), LARKFELL))
                .singleElement()
                .extracting(Remark::line)
                .asString()
                .startsWith("CARE  Only 10");
    }

    @Test
    void driftUntilAfterSunrise_bringsItsCaution() {
        Instant dark = Instant.parse("2026-06-21T03:00:00Z");
        ObservingMoment later =
                ObservingMoment.of(LARKFELL, SkyTime.of(dark.plusSeconds(7200)), Weather.standardAt(240));
        CatalogueStar sun = later.catalogueDirection(Ephemeris.apparent(SolarSystemBody.SUN, later));
        FixedStar star = new FixedStar(
                "a star",
                CatalogueStar.fixed(sun.rightAscension(), sun.declination().plus(Angle.ofDegrees(20))));
        Sighting drift = new StarDrift(
                dark,
                Duration.ofHours(2),
                star,
                ReadLength.ofField(0.1, Angle.ofDegrees(1)),
                new DriftDirection.OnSky(true),
                FINE);
        assertThat(SunCaution.of(new NightEvent.SightingTaken(drift), LARKFELL)).hasSize(1);
    }

    /** The document has one of each kind, as another test checks. */
    private static List<LoggedEvent> documented() throws IOException {
        Matcher blocks =
                Pattern.compile("(?ms)^```json\\n(.*?)^```$").matcher(Files.readString(DOCS.resolve("events.md")));
        return blocks.results()
                .flatMap(block -> block.group(1).lines())
                .map(line -> JsonLines.readLine(line, 20, new BodyFinder()))
                .toList();
    }

    @Test
    void everyEvent_isDocumented_roundTrips_andHasASentence() throws IOException {
        List<LoggedEvent> documented = documented();
        List<NightEvent> events = documented.stream().map(LoggedEvent::event).toList();
        assertThat(classes(events)).containsAll(leaves(NightEvent.class).toList());
        List<Sighting> sightings = events.stream()
                .filter(NightEvent.SightingTaken.class::isInstance)
                .map(event -> ((NightEvent.SightingTaken) event).sighting())
                .toList();
        assertThat(classes(sightings))
                .containsAll(leaves(Sighting.class)
                        // The combined result of a night's centrings, which is never logged.
                        .filter(kind -> kind != CentredStars.class)
                        .toList());
        for (LoggedEvent logged : documented) {
            String line = JsonLines.write(logged);
            assertThat(JsonLines.readLine(line, 0, new BodyFinder())).isEqualTo(logged);
            assertThat(EventWords.of(logged.event())).as(line).isNotBlank().doesNotContain("Optional");
        }
    }

    /**
     * The switch over the enum is exhaustive, so a new kind of event does not compile here without a form or a reason.
     */
    private static Optional<CommandForm> form(EventKind kind) {
        return switch (kind) {
            case BEGIN -> Optional.of(SetupForms.BEGIN);
            case COMPASS -> typed("compass");
            case SCALE -> typed("scale");
            case BEARING -> typed("bearing");
            case SHADOW -> typed("shadow");
            case ALTITUDE -> typed("altitude");
            case STILL_POINT -> typed("still");
            case DRIFT -> typed("drift");
            case TRAIL -> typed("trail");
            // These are on the Frames page; nothing about them is typed.
            case FRAMES, FIELD_DRIFT -> Optional.empty();
            case TURN, CORRECT_TURN -> Optional.of(NightForms.TURN);
            case UNLOGGED_TURN -> Optional.of(NightForms.UNLOGGED_TURN);
            case CORRECT_CLOCK -> Optional.of(NightForms.RETIME);
            case RIG -> Optional.of(SetupForms.RIG);
            case SITE -> Optional.of(SetupForms.SITE);
            case CLAMP -> Optional.of(NightForms.CLAMP);
            case UNCLAMP -> Optional.of(NightForms.UNCLAMP);
            case KNOCK -> Optional.of(NightForms.KNOCK);
            case ALLOW -> Optional.of(WorkForms.ALLOW_LIMIT);
            case WORK -> Optional.of(WorkForms.ALLOW_FOR);
            case CENTRE -> Optional.of(SightingForms.CENTRE);
            case HORIZON -> Optional.of(SetupForms.HORIZON);
            case TARGET -> Optional.of(WorkForms.TARGET);
            case SKIP -> Optional.of(NightForms.SKIP);
            case NOTE -> Optional.of(NightForms.NOTE);
            case WITHDRAW -> Optional.of(NightForms.UNDO);
        };
    }

    private static Optional<CommandForm> typed(String id) {
        return SightingForms.typed().stream()
                .filter(form -> form.id().equals(id))
                .findFirst();
    }

    @Test
    void everyTypedEvent_hasAForm_andEverySightingASketch() throws IOException {
        Map<EventKind, NightEvent> samples = new EnumMap<>(EventKind.class);
        documented().forEach(logged -> samples.put(EventKind.of(logged.event()), logged.event()));
        for (EventKind kind : EventKind.values()) {
            form(kind).ifPresent(form -> {
                assertThat(CommandForms.all()).as(kind.word()).contains(form);
                if (samples.get(kind) instanceof NightEvent.Measurement) {
                    assertThat(Sketches.drawn()).as(kind.word()).contains(form);
                }
            });
        }
    }

    @Test
    void everyPagePart_isRenderedByTheTemplate() throws IOException {
        String template = Files.readString(Path.of("..", "web", "src", "main", "jte", "web", "sections.jte"));
        leaves(Section.class)
                .forEach(part -> assertThat(template).contains("instanceof Section." + part.getSimpleName() + " "));
    }

    @Test
    void everyAdvice_hasAWordInJson() {
        List<Advice> advices = List.of(
                new Advice.TurnScrews(0.1, List.of(), Set.of(), false, AxisOffset.NONE, 0.9, List.of()),
                new Advice.MoveByHand(0.1, FINE, FINE),
                new Advice.TakeSighting(0.1, SightingKind.COMPASS, Optional.empty(), Duration.ZERO, "No fix yet"),
                new Advice.WaitForDark(0.1),
                new Advice.WaitForSky(0.1, Optional.empty()),
                new Advice.Clamp(0.1),
                new Advice.Stop(0.99, AxisOffset.NONE));
        assertThat(classes(advices)).containsAll(leaves(Advice.class).toList());
        assertThat(advices.stream()
                        .map(advice -> NightJson.advice(advice).path("do").asText()))
                .doesNotContain("")
                .doesNotHaveDuplicates();
    }

    private static List<Class<?>> classes(List<?> things) {
        return things.stream().<Class<?>>map(Object::getClass).toList();
    }
}
