package polewright.operations.work;

import java.time.Duration;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.sky.InputRefused;

/** Arguments shared by all items of tonight's work. */
final class ItemArguments {
    private static final double DAY_MINUTES = 1440;
    private static final String LONGEST = "give a time within one night";

    static final Argument<String> NAME = Argument.positional(
                    "name", "Name of the item", "One of the same name is replaced.", Words.plain("NAME"))
            .required();
    static final Figure MINUTES = Figure.of(Unit.MINUTES).between(-DAY_MINUTES, DAY_MINUTES, LONGEST);
    static final Figure SECONDS = Figure.of(Unit.SECONDS).between(-DAY_MINUTES * 60, DAY_MINUTES * 60, LONGEST);

    private ItemArguments() {}

    static String name(Entries entries) {
        String name = entries.of(NAME).strip();
        if (name.isEmpty()) {
            throw new InputRefused("the name is empty", "give a short name");
        }
        return name;
    }

    static Duration minutes(double minutes) {
        return seconds(minutes * 60);
    }

    static Duration seconds(double seconds) {
        return Duration.ofMillis(Math.round(seconds * 1000));
    }
}
