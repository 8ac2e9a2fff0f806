package polewright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;
import polewright.sky.place.Site;
import polewright.web.session.NightSession;

/**
 * Someone at a simulated wedge who follows the page and enters what is seen. The page is the only source of
 * instructions: each step begins with a press of its biggest button.
 */
final class PersonAtThePage {
    private final ServedNight night;
    private final TelescopeByEye telescope;

    PersonAtThePage(ServedNight night, TelescopeByEye telescope) {
        this.night = night;
        this.telescope = telescope;
    }

    PersonAtThePage(ServedNight night, Site site, AxisOffset offset, long seed) {
        this(night, new SimulatedTelescope(site, offset, seed));
    }

    /** Where the axis really points. */
    AxisOffset truth() {
        return telescope.offset();
    }

    Advice advice() {
        return tonight().state().advice();
    }

    NightSession.Tonight tonight() {
        return night.session().tonight().orElseThrow();
    }

    /** Carries out the current step. */
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
        assertLogged(page, last + 1);
    }

    static void assertLogged(Page page, long seq) {
        assertThat(page.locator(".said"))
                .containsText("Logged #" + seq + ":", new LocatorAssertions.ContainsTextOptions().setTimeout(60_000));
    }

    /** Carries out the advice at the wedge. */
    void act(Advice advice) {
        if (advice instanceof Advice.TurnScrews turn) {
            if (turn.loosenFirst()) {
                telescope.clamp();
            }
            telescope.turn(turnsOf(turn, ScrewTurn.Which.AZIMUTH), turnsOf(turn, ScrewTurn.Which.ALTITUDE));
            night.wait(Duration.ofMinutes(3));
        } else if (advice instanceof Advice.Clamp) {
            telescope.clamp();
            night.wait(Duration.ofMinutes(1));
        } else if (advice instanceof Advice.MoveByHand move) {
            telescope.moveByHand(move.azimuth(), move.altitude());
            night.wait(Duration.ofMinutes(4));
        } else {
            throw new AssertionError("nothing to do for " + advice);
        }
    }

    private static HandTurns turnsOf(Advice.TurnScrews turn, ScrewTurn.Which screw) {
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
            case COMPASS -> Map.of("bearing", figure(telescope.compassDeg(night.now())));
            case LEVEL_AND_SCALE -> Map.of("altitude", figure(telescope.scaleDeg(night.now())));
            case SHADOW -> Map.of("angle", figure(telescope.shadowDeg(night.now())));
            case STILL_POINT -> {
                Optic optic = rig.widestOptic().orElseThrow();
                TelescopeByEye.StarInView seen = telescope.stillPoint(star(take), night.now(), optic);
                yield Map.of("distance", figure(seen.fields()), "toward", figure(seen.clock()), "with", optic.name());
            }
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST -> {
                double north = telescope.northwardArcsec(star(take), night.now(), take.watch());
                night.wait(take.watch());
                yield Map.of(
                        "moved", figure(Math.abs(north)), "unit", "arcsec", "toward", north >= 0 ? "north" : "south");
            }
            case FRAMES -> throw new AssertionError("nobody has a camera here");
        };
        read.forEach((field, value) -> enter(page, field, value));
        page.locator(".entry button.main").click();
    }

    /** Begins a night at Larkfell on the page. */
    static void begin(Page page, ServedNight night) {
        page.navigate(night.address("/"));
        page.locator("a.main").click();
        page.locator("#begin-site").fill("54.60,-2.90,240");
        page.locator("#begin-name").fill("Larkfell");
        page.locator(".entry button.main").click();
        assertLogged(page, 1);
    }

    private static void enter(Page page, String field, String value) {
        if (field.equals("unit") || field.equals("with")) {
            page.locator("select[name=" + field + "]").selectOption(value);
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
