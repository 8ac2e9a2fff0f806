package polewright.operations.work;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.FigureOr;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Text;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.LimitInput;
import polewright.operations.input.PresetInput;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** What tonight is for, and with it how far off the pole the axis may be. */
public final class WorkActions {
    private static final Choice<WorkPreset> PURPOSES = new Choice<>(
            "WORK",
            "",
            Arrays.stream(WorkPreset.values())
                    .map(preset -> new Option(preset.words(), preset.words()))
                    .toList(),
            typed -> PresetInput.of(List.of(typed)));

    public static final Argument<Double> LIMIT = Argument.positional(
            "arcmin",
            "How far off the pole the axis may be",
            "Whatever the work; 5 suits visual observing.",
            new FigureOr<>(Unit.ARCMINUTES, "", new LimitInput()::convert));
    public static final Argument<WorkPreset> FOR = Argument.option("for", "Tonight is for", "", PURPOSES);
    public static final Argument<WorkPreset> ALSO =
            Argument.option("also", "Also for", "Added to tonight's work.", PURPOSES);
    private static final Argument<String> DROPPED = Argument.positional(
                    "name", "Name of the item", "", new Text("NAME"))
            .required();

    /** Sets the work, adds to it, or sets a plain limit instead. */
    public static final Action ALLOW = Action.of(
                    "allow",
                    List.of("allow"),
                    "Set what tonight is for",
                    "The tolerance of the polar axis follows from it.",
                    WorkActions::allowed)
            .taking(LIMIT, FOR, ALSO)
            .taking(CameraArguments.ALL)
            .sentBy("Set it")
            .forExample("", "")
            .forExample("", "--for long guided subs")
            .forExample("", "--for short subs --focal-length 1200 --pixel 3.76")
            .forExample("", "3");

    /** Removes an item. */
    public static final Action DROP = Action.of(
                    "allow-drop",
                    List.of("allow", "drop"),
                    "Remove an item of tonight's work",
                    "",
                    WorkActions::dropped)
            .taking(DROPPED)
            .sentBy("Remove it");

    private WorkActions() {}

    /** The choice of work where leaving it out means this. */
    public static Argument<WorkPreset> purpose(String otherwise) {
        return FOR.as(PURPOSES.offering(otherwise, PURPOSES.options()));
    }

    /** The actions on single items. */
    public static List<Action> ofItems() {
        return List.of(LookAction.LOOK, ShotAction.SHOT, DROP);
    }

    private static List<NightEvent> allowed(Entries entries, ActionContext context) {
        Optional<WorkPreset> purpose = entries.given(FOR);
        Optional<WorkPreset> more = entries.given(ALSO);
        if (purpose.isEmpty() && more.isEmpty()) {
            return List.of(new NightEvent.AllowanceSet(limit(entries)));
        }
        if (entries.given(LIMIT).isPresent()) {
            throw plainLimit();
        }
        List<WorkItem> before = items(context);
        List<WorkItem> items = purpose.map(preset -> List.of(PresetWork.item(preset, entries, context.rig(), before)))
                .orElse(before);
        Work work = more.map(
                        preset -> TonightsWork.with(items, PresetWork.item(preset, entries, context.rig(), before)))
                .orElseGet(() -> new Work(items));
        return List.of(TonightsWork.set(context.begun(), work));
    }

    private static DiscAllowance limit(Entries entries) {
        double arcmin = entries.given(LIMIT)
                .orElseThrow(() -> new InputRefused(
                        CameraArguments.areGiven(entries)
                                ? "a camera is given, but not the work"
                                : "neither work nor limit is given",
                        "give {for=short subs} or {for=long guided subs} too"));
        if (CameraArguments.areGiven(entries)) {
            throw plainLimit();
        }
        return new DiscAllowance(Angle.ofArcminutes(arcmin));
    }

    private static InputRefused plainLimit() {
        return new InputRefused(
                "a plain limit does not depend on the work", "give the arcminutes alone, or leave them out");
    }

    private static List<NightEvent> dropped(Entries entries, ActionContext context) {
        String name = entries.of(DROPPED);
        List<WorkItem> before = items(context);
        List<WorkItem> left = before.stream()
                .filter(item ->
                        !item.name().equalsIgnoreCase(name) && !item.name().equalsIgnoreCase("a " + name))
                .toList();
        if (left.size() == before.size()) {
            throw new InputRefused(
                    "nothing in tonight's work is called '" + name + "'",
                    before.isEmpty()
                            ? "set what tonight is for: {do:allow for=…}"
                            : "remove one of "
                                    + before.stream().map(WorkItem::name).collect(Collectors.joining(", ")));
        }
        if (left.isEmpty()) {
            throw new InputRefused(
                    "'" + name + "' is the only item of tonight's work", "set other work: {do:allow for=…}");
        }
        return List.of(TonightsWork.set(context.begun(), new Work(left)));
    }

    static List<WorkItem> items(ActionContext context) {
        return context.before().work().map(Work::items).orElse(List.of());
    }
}
