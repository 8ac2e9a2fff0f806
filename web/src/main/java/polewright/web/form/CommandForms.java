package polewright.web.form;

import java.util.List;
import java.util.stream.Stream;

/** All forms: one for each command that adds to the log and needs no file. */
public final class CommandForms {
    private static final List<CommandForm> ALL = Stream.of(
                    SightingForms.all(),
                    List.of(SightingForms.CENTRE),
                    WorkForms.all(),
                    NightForms.all(),
                    SetupForms.all())
            .flatMap(List::stream)
            .toList();

    private CommandForms() {}

    /** The sightings that are typed, the coarse ones first. */
    public static List<CommandForm> sightings() {
        return SightingForms.all();
    }

    /** Those of the game. */
    public static List<CommandForm> practice() {
        return PracticeForms.all();
    }

    /** Those of the laptop itself, whatever the night. */
    public static List<CommandForm> house() {
        return List.of(DeviceForms.REVOKE);
    }

    /** Those that add to a log. */
    public static List<CommandForm> all() {
        return ALL;
    }
}
