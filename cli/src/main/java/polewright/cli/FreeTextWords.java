package polewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Stack;
import java.util.stream.Collectors;
import picocli.CommandLine.IParameterConsumer;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import polewright.operations.action.Argument;

/**
 * All words up to the next option, with or without quotes; a command's name among them is an ordinary word.
 *
 * @param argument whose options are offered if there are none
 */
record FreeTextWords(Argument<?> argument) implements IParameterConsumer {
    @Override
    public void consumeParameters(Stack<String> typed, ArgSpec option, CommandSpec command) {
        List<String> words = new ArrayList<>();
        while (!typed.isEmpty() && !typed.peek().startsWith("-")) {
            words.add(typed.pop());
        }
        if (words.isEmpty()) {
            throw new ParameterException(
                    command.commandLine(),
                    ((OptionSpec) option).longestName() + " needs a value. Add one of "
                            + argument.type().options().stream()
                                    .map(choice -> '"' + choice.value() + '"')
                                    .collect(Collectors.joining(", "))
                            + ".",
                    option,
                    "");
        }
        option.setValue(words);
    }
}
