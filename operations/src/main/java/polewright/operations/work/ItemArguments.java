package polewright.operations.work;

import java.time.Duration;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.sky.InputRefused;

/** What every item of tonight's work has. */
final class ItemArguments {
    private static final double LONGEST_SECONDS = 1e6;
    private static final String LONGEST = "give a time within one night";

    static final Argument<String> NAME = Argument.positional(
                    "name", "Name", "An item of that name is changed.", Words.plain("NAME"))
            .required();
    static final Figure MINUTES = Figure.of(Unit.MINUTES).between(-LONGEST_SECONDS / 60, LONGEST_SECONDS / 60, LONGEST);
    static final Figure SECONDS = Figure.of(Unit.SECONDS).between(-LONGEST_SECONDS, LONGEST_SECONDS, LONGEST);

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
