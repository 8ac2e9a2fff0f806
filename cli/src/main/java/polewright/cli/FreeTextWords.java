package polewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Stack;
import picocli.CommandLine.IParameterConsumer;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import polewright.operations.input.PresetInput;

/** All words up to the next option, with or without quotes; a command's name among them is an ordinary word. */
final class FreeTextWords implements IParameterConsumer {
    @Override
    public void consumeParameters(Stack<String> typed, ArgSpec option, CommandSpec command) {
        List<String> words = new ArrayList<>();
        while (!typed.isEmpty() && !typed.peek().startsWith("-")) {
            words.add(typed.pop());
        }
        if (words.isEmpty()) {
            throw new ParameterException(
                    command.commandLine(),
                    ((OptionSpec) option).longestName() + " needs the kind of work. Add one of " + PresetInput.choices()
                            + ".",
                    option,
                    "");
        }
        option.setValue(words);
    }
}
