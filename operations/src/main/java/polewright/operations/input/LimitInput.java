package polewright.operations.input;

import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/** The axis tolerance in arcminutes. A word here is reported as a mistyped subcommand or preset. */
public final class LimitInput implements ITypeConverter<Double> {
    @Override
    public Double convert(String typed) {
        if (typed.matches("\\s*[a-zA-Z].*")) {
            throw new InputRefused(
                    "'" + typed + "' is not a limit or a kind of work",
                    "write arcminutes, such as 5, or look, shot or drop, or --for with one of "
                            + PresetInput.choices());
        }
        return new NumberInput().convert(typed);
    }
}
