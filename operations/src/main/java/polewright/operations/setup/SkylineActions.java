package polewright.operations.setup;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.FileName;
import polewright.operations.action.ArgumentType.Several;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Entries;
import polewright.operations.input.SkylineInput;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.place.Horizon;

/** Sets the skyline of the site. */
public final class SkylineActions {
    public static final Argument<List<String>> CORNERS = Argument.positional(
            "corners",
            "Corners: azimuth and altitude in degrees",
            "0,8 95,22.5 180,4 270,15. Two corners at one azimuth make a vertical edge.",
            new Several("AZIMUTH,ALTITUDE", "\\s+"));
    private static final Argument<Path> CSV =
            Argument.option("csv", "The same from a file", "One corner per line.", new FileName("FILE"));
    private static final Argument<Boolean> OPEN =
            Argument.option("open", "The sky is open all round", "Removes all corners.", new Tick());

    public static final Action SKYLINE = Action.of(
                    "horizon",
                    List.of("horizon"),
                    "Set the skyline",
                    "Corners joined by straight lines: azimuth from north through east, and altitude. The next night"
                            + " at the same site uses it too.",
                    SkylineActions::set)
            .taking(CORNERS, CSV, OPEN)
            .sentBy("Set it")
            .forExample("", "0,8 95,22.5 180,4 270,15")
            .forExample("", "--csv garden.csv --picture skyline.svg")
            .forExample("", "--open");

    /** One press instead of {@link #OPEN}. */
    public static final Action OPEN_SKY = Action.of(
                    "open-sky",
                    List.of("horizon", "--open"),
                    "Set an open sky",
                    "Removes all corners of the skyline.",
                    (entries, context) -> List.of(new NightEvent.HorizonSet(Horizon.OPEN)))
            .sentBy("Set an open sky");

    private SkylineActions() {}

    /** Whether anything is given. */
    public static boolean isGiven(Entries entries) {
        return given(entries) > 0;
    }

    private static int given(Entries entries) {
        return (entries.given(CORNERS).isPresent() ? 1 : 0)
                + (entries.given(CSV).isPresent() ? 1 : 0)
                + (entries.isTicked(OPEN) ? 1 : 0);
    }

    private static List<NightEvent> set(Entries entries, ActionContext context) {
        if (given(entries) != 1) {
            throw new InputRefused(
                    given(entries) == 0 ? "the skyline is missing" : "the skyline is given twice",
                    "give corners, {csv} or {open}, only one of them");
        }
        Optional<Path> file = entries.given(CSV);
        if (file.isPresent()) {
            return List.of(new NightEvent.HorizonSet(read(file.get())));
        }
        return List.of(new NightEvent.HorizonSet(entries.given(CORNERS)
                .map(corners ->
                        new Horizon(corners.stream().map(SkylineInput::corner).toList()))
                .orElse(Horizon.OPEN)));
    }

    /**
     * Reads a skyline from a file.
     *
     * @throws OperationFailed if it cannot be read or is none
     */
    public static Horizon read(Path file) {
        try {
            return SkylineInput.ofCsv(Files.readString(file, StandardCharsets.UTF_8));
        } catch (InputRefused refused) {
            throw new OperationFailed(file + ": " + refused.getMessage());
        } catch (IOException e) {
            throw new OperationFailed(file + " cannot be read. Give a text file of azimuths and altitudes.");
        }
    }
}
