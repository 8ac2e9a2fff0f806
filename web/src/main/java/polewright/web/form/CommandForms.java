package polewright.web.form;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.FilledAction;

/** All forms: one for each action that needs no file. */
public final class CommandForms {
    private static final List<CommandForm> ALL = Stream.of(
                    SightingForms.typed(),
                    List.of(SightingForms.CENTRE),
                    WorkForms.all(),
                    NightForms.all(),
                    SetupForms.all())
            .flatMap(List::stream)
            .toList();

    private CommandForms() {}

    /** The sightings that are typed in, the coarse ones first. */
    public static List<CommandForm> sightings() {
        return SightingForms.typed();
    }

    /** The forms of the practice. */
    public static List<CommandForm> practice() {
        return PracticeForms.all();
    }

    /** The forms of the laptop itself, which belong to no night. */
    public static List<CommandForm> laptop() {
        return DeviceForms.all();
    }

    /** All forms. */
    static Stream<CommandForm> everywhere() {
        return Stream.of(ALL, practice(), laptop()).flatMap(List::stream);
    }

    /** The first form of the action that has all fields that are filled in. */
    public static Optional<CommandForm> of(FilledAction filled) {
        return ALL.stream()
                .filter(form -> form.action().equals(filled.action()))
                .filter(form -> form.fields().stream()
                        .map(Argument::name)
                        .toList()
                        .containsAll(filled.typed().keySet()))
                .findFirst();
    }

    /** The forms that add to a log. */
    public static List<CommandForm> all() {
        return ALL;
    }
}
