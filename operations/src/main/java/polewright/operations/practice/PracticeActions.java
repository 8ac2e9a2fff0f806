package polewright.operations.practice;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Whole;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Effect;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.TurnsInput;
import polewright.operations.setup.RigFile;
import polewright.operations.setup.SiteArguments;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.PracticeState;
import polewright.simulation.practice.Scenario;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Actions on the simulated mount of a practice, in addition to the ordinary ones. */
public final class PracticeActions {
    private static final long DEFAULT_SEED = 6;

    private static final Argument<Long> SEED = Argument.option(
                    "seed", "Practice number", "Another number hides another offset.", new Whole("NUMBER"))
            .otherwise(String.valueOf(DEFAULT_SEED));
    private static final Argument<Boolean> SOUTH = Argument.option(
            "south", "Under the southern sky", "At Tussock Flat, an invented site at 44 S.", new Tick());
    private static final Argument<Site> SITE =
            SiteArguments.SITE.otherwise("Larkfell, an invented site at 55 N").seldom();
    private static final Argument<Instant> AT =
            Argument.begins("When it begins (in the dark)").seldom();
    private static final Argument<Boolean> CAMERA =
            Argument.option("camera", "With a camera on the tube", "", new Tick());
    private static final Argument<Path> RIG = RigFile.RIG.otherwise("a fork on a wedge");

    private static final Argument<ScrewTurn.Which> SCREW = Argument.positional(
                    "screw",
                    "Screw",
                    "",
                    Choice.of(
                            ScrewTurn.Which.class,
                            "azimuth|altitude",
                            "",
                            Map.of(ScrewTurn.Which.AZIMUTH, "azimuth", ScrewTurn.Which.ALTITUDE, "altitude")))
            .required();
    private static final Argument<HandTurns> TURNS = Argument.positional(
                    "turns",
                    "Turns, clockwise",
                    "1/4, 1.25 or 1/2 ccw; past the goal and back: 2 ccw then 1/2 cw",
                    new Words<>("TURNS", new TurnsInput()::convert))
            .required();
    private static final Argument<Double> RIGHT =
            Argument.option("right", "To the right", "Negative for left.", Figure.signed(Unit.DEGREES));
    private static final Argument<Double> UP =
            Argument.option("up", "Up", "Negative for down.", Figure.signed(Unit.DEGREES));
    private static final Argument<String> WITH = Argument.option("with", "Seen through", "", Words.plain("OPTIC"))
            .otherwise("the optic with the widest field");
    private static final Argument<String> STAR = Argument.positional(
                    "star", "Star", "Such as polaris, rigel, or \"alp Lyr\".", Words.plain("STAR"))
            .required();
    private static final Argument<Double> MINUTES =
            Argument.option("minutes", "How long", "", Figure.of(Unit.MINUTES)).required();
    private static final Argument<Double> TURNED = Argument.option(
                    "turned",
                    "Right ascension turned from home by",
                    "Westward: -30, 0 and 30 make a good set.",
                    Figure.signed(Unit.DEGREES))
            .required();
    private static final Argument<Double> WAITED = Argument.positional(
                    "minutes", "Minutes", "", Figure.of(Unit.MINUTES))
            .required();

    public static final Action BEGIN = Action.having(
                    "practice-begin",
                    List.of("practice", "begin"),
                    "Begin a practice",
                    "A night by day: a simulated wedge with a hidden offset, and time that passes only when you do"
                            + " something. An earlier practice is kept.",
                    (Effect.BeginningPractice) PracticeActions::scenario)
            .taking(SEED, SOUTH, SITE, AT, CAMERA, RIG)
            .sentBy("Begin");
    public static final Action SCREW_TURNED = practised(
                    "Turn a screw without logging it",
                    "Turn",
                    (entries, before) -> new PracticeAction.TurnScrew(entries.of(SCREW), entries.of(TURNS)),
                    "screw")
            .taking(SCREW, TURNS)
            .forExample("", "azimuth \"1 1/4 ccw\"");
    public static final Action CLAMP =
            practised("Tighten the clamps", "Tighten", (entries, before) -> new PracticeAction.Clamp(), "clamp");
    public static final Action UNCLAMP =
            practised("Loosen the clamps", "Loosen", (entries, before) -> new PracticeAction.Unclamp(), "unclamp");
    public static final Action MOVE = practised(
                    "Move the whole mount by hand",
                    "Move",
                    (entries, before) -> new PracticeAction.MoveByHand(degrees(entries, RIGHT), degrees(entries, UP)),
                    "move")
            .taking(RIGHT, UP)
            .about("Facing the pole.");
    public static final Action COMPASS = practised(
            "Read the compass along the axis",
            "Look",
            (entries, before) -> new PracticeAction.ReadCompass(),
            "look",
            "compass");
    public static final Action SCALE = practised(
            "Level the base and read the wedge's scale",
            "Look",
            (entries, before) -> new PracticeAction.ReadScale(),
            "look",
            "scale");
    public static final Action ROCKING = practised(
                    "Swing the tube in right ascension and look", "Look", PracticeActions::rocked, "look", "rocking")
            .taking(WITH);
    public static final Action DRIFT = practised(
                    "Watch a star drift while the mount tracks",
                    "Watch it",
                    (entries, before) -> new PracticeAction.WatchStar(entries.of(STAR), minutes(entries.of(MINUTES))),
                    "look",
                    "drift")
            .taking(STAR, MINUTES);
    public static final Action FRAME = practised(
                    "Take a frame",
                    "Take it",
                    (entries, before) -> new PracticeAction.TakeFrame(Angle.ofDegrees(entries.of(TURNED))),
                    "frame")
            .taking(TURNED);
    public static final Action WAIT = practised(
                    "Let time pass",
                    "Wait",
                    (entries, before) -> new PracticeAction.Wait(minutes(entries.of(WAITED))),
                    "wait")
            .taking(WAITED);

    private static final List<Action> ALL =
            List.of(BEGIN, SCREW_TURNED, CLAMP, UNCLAMP, MOVE, COMPASS, SCALE, ROCKING, DRIFT, FRAME, WAIT);

    private PracticeActions() {}

    /** All of them. */
    public static List<Action> all() {
        return ALL;
    }

    private static Action practised(String title, String button, Effect.Practising effect, String... words) {
        return Action.having(
                        "practice-" + words[words.length - 1],
                        Stream.concat(Stream.of("practice"), Stream.of(words)).toList(),
                        title,
                        "",
                        effect)
                .sentBy(button);
    }

    private static Scenario scenario(Entries entries) {
        Optional<Site> own = entries.given(SITE);
        boolean isSouth = entries.isTicked(SOUTH);
        if (own.isPresent() && (isSouth || entries.given(AT).isEmpty())) {
            throw new InputRefused("your own site needs a time when it is dark, and excludes {south}", "give {at}");
        }
        InventedSite invented = isSouth ? InventedSite.TUSSOCK_FLAT : InventedSite.LARKFELL;
        String name = own.isPresent() ? "your site" : invented.siteName();
        Site site = own.orElse(invented.site());
        Instant from = entries.given(AT).orElse(invented.evening());
        long seed = entries.given(SEED).orElse(DEFAULT_SEED);
        Rig rig = entries.given(RIG).map(RigFile::read).orElseGet(Rig::typicalForkOnWedge);
        return entries.isTicked(CAMERA)
                ? Scenario.withCamera(name, site, rig, from, seed)
                : Scenario.byEye(name, site, rig, from, seed);
    }

    private static PracticeAction rocked(Entries entries, PracticeState before) {
        return new PracticeAction.RockAndLook(entries.given(WITH)
                .or(() -> before.scenario().rig().widestOptic().map(Optic::name))
                .orElseThrow(() -> new InputRefused(
                        "the rig has no optics", "begin another practice with a rig that has a finder")));
    }

    private static Angle degrees(Entries entries, Argument<Double> argument) {
        return Angle.ofDegrees(entries.given(argument).orElse(0.0));
    }

    private static Duration minutes(double minutes) {
        return Duration.ofSeconds(Math.round(minutes * 60));
    }
}
