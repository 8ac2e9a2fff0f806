package polewright.app.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import polewright.axis.AxisOffset;
import polewright.axis.advice.Advice;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.rig.HandTurns;
import polewright.axis.rig.Optic;
import polewright.axis.rig.Rig;
import polewright.axis.sighting.BodyBearing;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.DriftDirection;
import polewright.axis.sighting.LevelledScale;
import polewright.axis.sighting.StarDrift;
import polewright.axis.sighting.StillPoint;
import polewright.rehearsal.HiddenWedge;
import polewright.rehearsal.SimulatedObserver;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Someone who does as the page says, at a simulated wedge, and enters what is seen there. The page is all that tells what
 * to do: each step begins with a press of its biggest button.
 */
final class PersonAtThePage {
    private final ServedNight night;
    private final Random random;
    private final SimulatedObserver observer;
    private HiddenWedge wedge;

    PersonAtThePage(ServedNight night, Site site, AxisOffset offset, long seed) {
        this.night = night;
        random = new Random(seed);
        wedge = HiddenWedge.of(site, Rig.typicalForkOnWedge(), offset, random);
        observer = new SimulatedObserver(Weather.standardAt(site.heightMetres()), random);
    }

    /** Where the axis really points. */
    AxisOffset truth() {
        return wedge.offset();
    }

    Advice advice() {
        return tonight().state().advice();
    }

    NightDesk.Tonight tonight() {
        return night.desk().tonight().orElseThrow();
    }

    /** Does the one thing that is to be done now. */
    void follow(Page page) {
        long last = tonight().lastSeq();
        Advice advice = advice();
        if (advice instanceof Advice.TakeSighting take) {
            page.locator("a.main").click();
            sight(page, take);
        } else {
            act(advice);
            page.locator(".done button.main").click();
        }
        isLogged(page, last + 1);
    }

    static void isLogged(Page page, long seq) {
        assertThat(page.locator(".said"))
                .containsText("Logged #" + seq + ":", new LocatorAssertions.ContainsTextOptions().setTimeout(60_000));
    }

    /** Does at the wedge what is advised. */
    void act(Advice advice) {
        if (advice instanceof Advice.TurnScrews turn) {
            if (turn.loosenFirst()) {
                wedge = wedge.clamped(random);
            }
            wedge = wedge.turned(made(turn, ScrewTurn.Which.AZIMUTH), made(turn, ScrewTurn.Which.ALTITUDE), random);
            night.wait(Duration.ofMinutes(3));
        } else if (advice instanceof Advice.Clamp) {
            wedge = wedge.clamped(random);
            night.wait(Duration.ofMinutes(1));
        } else if (advice instanceof Advice.MoveByHand move) {
            wedge = wedge.moved(move.azimuth(), move.altitude(), random);
            night.wait(Duration.ofMinutes(4));
        } else {
            throw new AssertionError("nothing to do for " + advice);
        }
    }

    private static HandTurns made(Advice.TurnScrews turn, ScrewTurn.Which screw) {
        return turn.turns().stream()
                .filter(each -> each.screw() == screw)
                .map(ScrewTurn::made)
                .findFirst()
                .orElse(HandTurns.NONE);
    }

    private void sight(Page page, Advice.TakeSighting take) {
        Rig rig = tonight().state().begun().rig();
        night.wait(Duration.ofMinutes(2));
        Map<String, String> read = switch (take.kind()) {
            case COMPASS -> {
                CompassBearing seen = observer.compass(wedge, night.now(), CompassBearing.USUAL_SIGMA);
                yield Map.of("bearing", figure(seen.magneticBearing().degrees()));
            }
            case LEVEL_AND_SCALE -> {
                LevelledScale seen = observer.scale(wedge, night.now(), LevelledScale.USUAL_SIGMA);
                yield Map.of("altitude", figure(seen.altitude().degrees()));
            }
            case SHADOW -> {
                BodyBearing seen = observer.bearing(
                        wedge, night.now(), SolarSystemBody.SUN, BodyBearing.Line.SHADOW, BodyBearing.USUAL_SIGMA);
                yield Map.of("angle", figure(seen.clockwise().degrees()));
            }
            case STILL_POINT -> {
                Optic optic = rig.widestOptic().orElseThrow();
                StillPoint seen = observer.stillPoint(wedge, night.now(), star(take), optic);
                yield Map.of(
                        "distance", figure(seen.distance().count()),
                        "toward", figure(seen.toward().hours()),
                        "with", optic.name());
            }
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> {
                StarDrift seen =
                        observer.drift(wedge, night.now(), star(take), take.watch(), StarDrift.usualSigma(rig));
                night.wait(take.watch());
                yield Map.of(
                        "moved",
                        figure(seen.drift().count()),
                        "unit",
                        "arcsec",
                        "toward",
                        ((DriftDirection.OnSky) seen.direction()).north() ? "north" : "south");
            }
            case FRAMES -> throw new AssertionError("nobody has a camera here");
        };
        read.forEach((field, value) -> enter(page, field, value));
        page.locator(".entry button.main").click();
    }

    private static void enter(Page page, String field, String value) {
        if (field.equals("unit")) {
            page.locator("select[name=unit]").selectOption(value);
        } else {
            page.locator("input[name=" + field + "]").fill(value);
        }
    }

    private static FixedStar star(Advice.TakeSighting take) {
        String name = take.star().orElseThrow().name();
        return NamedStars.bundled().all().stream()
                .filter(star -> star.label().equals(name))
                .findFirst()
                .map(star -> new FixedStar(star.label(), star.place()))
                .orElseThrow();
    }

    private static String figure(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
