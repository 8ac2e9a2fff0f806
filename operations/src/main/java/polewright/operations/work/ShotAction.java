package polewright.operations.work;

import java.time.Duration;
import java.util.List;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.mount.rig.Camera;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.FigureOr;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.GuideStarInput;
import polewright.operations.input.TrailInput;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

/** Adds an imaging run to tonight's work, or changes the one of that name. */
public final class ShotAction {
    private static final double USUAL_TOTAL_MINUTES = 60;
    private static final double USUAL_SEEING_ARCSEC = 3;

    private static final Argument<Double> EXPOSURE = Argument.option(
                    "exposure", "One exposure", "", ItemArguments.SECONDS)
            .required();
    private static final Argument<Double> TOTAL = Argument.option(
                    "total",
                    "All exposures together",
                    "From the first exposure to the end of the last.",
                    ItemArguments.MINUTES)
            .otherwise("60");
    private static final Argument<GuideStarInput.Distance> GUIDED = Argument.option(
                    "guided",
                    "Guided: distance of the guide star from the centre",
                    "30 is usual.",
                    new FigureOr<>(Unit.ARCMINUTES, GuideStarInput.USUAL, new GuideStarInput()::convert))
            .otherwise("unguided");
    private static final Argument<TrailInput.Trail> TOLERANCE = Argument.option(
                    "tolerance",
                    "Longest acceptable trail",
                    "2.5 arcseconds, or 2px.",
                    new FigureOr<>(Unit.ARCSECONDS, "", new TrailInput()::convert))
            .otherwise("the seeing, or 1.5 pixels if that is more")
            .seldom();
    private static final Argument<Double> SEEING = Argument.option(
                    "seeing",
                    "Seeing (FWHM of stars)",
                    "",
                    Figure.of(Unit.ARCSECONDS).between(0.1, 30, "give the FWHM of a star; 3 is usual"))
            .otherwise("3")
            .seldom();

    public static final Action SHOT = Action.of(
                    "allow-shot", List.of("allow", "shot"), "Add imaging to tonight's work", "", ShotAction::shot)
            .taking(ItemArguments.NAME, EXPOSURE, TOTAL, GUIDED, TOLERANCE, SEEING)
            .taking(CameraArguments.ALL)
            .taking(RegionArguments.ALL)
            .checkedBy((entries, context) -> RegionArguments.notices(entries, context, total(entries)))
            .sentBy("Set it")
            .forExample("", "ring --exposure 120 --target \"M 57\" --guided 20")
            .forExample("", "wide --exposure 60 --focal-length 50 --pixel 4.3");

    private ShotAction() {}

    private static List<NightEvent> shot(Entries entries, ActionContext context) {
        Camera with = CameraArguments.camera(entries, context.rig(), WorkActions.items(context));
        Duration total = total(entries);
        ImagingRun run = new ImagingRun(
                ItemArguments.name(entries),
                with,
                RegionArguments.region(entries, context, total),
                exposure(entries),
                total,
                guiding(entries, with),
                trail(entries, with));
        return List.of(TonightsWork.set(context.begun(), TonightsWork.with(WorkActions.items(context), run)));
    }

    private static Duration exposure(Entries entries) {
        return ItemArguments.seconds(entries.of(EXPOSURE));
    }

    private static Duration total(Entries entries) {
        Duration usual = ItemArguments.minutes(USUAL_TOTAL_MINUTES);
        Duration exposure = exposure(entries);
        return entries.given(TOTAL)
                .map(ItemArguments::minutes)
                .orElseGet(() -> usual.compareTo(exposure) < 0 ? exposure : usual);
    }

    private static Guiding guiding(Entries entries, Camera with) {
        return entries.given(GUIDED)
                .<Guiding>map(star -> new Guiding.Guided(star.with(with)))
                .orElseGet(Guiding.Unguided::new);
    }

    private static Angle trail(Entries entries, Camera with) {
        Angle seeing = Angle.ofArcseconds(entries.given(SEEING).orElse(USUAL_SEEING_ARCSEC));
        return entries.given(TOLERANCE)
                .map(trail -> trail.with(with))
                .orElseGet(() -> ImagingRun.usualTolerance(with, seeing));
    }
}
