package polewright.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import polewright.sky.InputRefused;

/** A refused command line as one line: where, what is wrong, what to do. */
final class UsageErrors {
    private static final String END_OF_OPTIONS = "--";

    private UsageErrors() {}

    /**
     * {@code turn --azimuth: 'abc' is not a number of turns: write 1.25 …}, after the command's name. An unknown option
     * is reported first: the parser takes its value for an argument of the command and complains about that.
     */
    static String of(ParameterException refusal, String... typed) {
        CommandLine line = refusal.getCommandLine();
        String command = line.getCommandSpec().qualifiedName();
        Optional<String> unknown = unknownOption(line, typed);
        if (unknown.isPresent()) {
            UnmatchedArgumentException unmatched = new UnmatchedArgumentException(line, List.of(unknown.get()));
            return command + ": " + unmatched(unmatched, line);
        }
        if (refusal.getCause() instanceof InputRefused refused) {
            return command + " " + name(refusal.getArgSpec()) + ": " + refused.getMessage();
        }
        return command + ": " + what(refusal, line);
    }

    private static Optional<String> unknownOption(CommandLine line, String... typed) {
        Set<String> known = line.getCommandSpec().optionsMap().keySet();
        return Arrays.stream(typed)
                .takeWhile(word -> !word.equals(END_OF_OPTIONS))
                .filter(word -> word.startsWith(END_OF_OPTIONS))
                .filter(word -> !known.contains(withoutValue(word)))
                .findFirst();
    }

    private static String what(ParameterException refusal, CommandLine line) {
        if (refusal instanceof MissingParameterException missing) {
            return missing(missing.getMissing());
        } else if (refusal instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched, line);
        } else if (refusal instanceof OverwrittenOptionException twice) {
            return name(twice.getOverwritten()) + " is given twice. Give it once.";
        } else if (refusal.getArgSpec() == null && !line.getSubcommands().isEmpty()) {
            return "a word is missing. Add " + choices(line) + ".";
        }
        return String.valueOf(refusal.getMessage()).lines().findFirst().orElse("wrong usage");
    }

    private static String missing(List<ArgSpec> missing) {
        String names = missing.stream().map(UsageErrors::withValue).collect(Collectors.joining(", "));
        return names + (missing.size() == 1 ? " is missing." : " are missing.");
    }

    private static String unmatched(UnmatchedArgumentException refusal, CommandLine line) {
        String word = "'" + refusal.getUnmatched().get(0) + "'";
        List<String> near = refusal.getSuggestions();
        if (refusal.isUnknownOption()) {
            String option = withoutValue(refusal.getUnmatched().get(0));
            List<String> having = subcommandsWith(option, line);
            return "unknown option '" + option + "'"
                    + (having.isEmpty()
                            ? didYouMean(near, "See its options with --help")
                            : ". It belongs to " + String.join(" and ", having) + ".");
        } else if (!line.getSubcommands().isEmpty()
                && line.getParseResult().matchedArgs().isEmpty()) {
            return "unknown command " + word + didYouMean(near, "Choose " + choices(line));
        }
        return word + " is one word too many. Put text with spaces in quotes.";
    }

    private static String withoutValue(String option) {
        return option.replaceFirst("=.*", "");
    }

    private static List<String> subcommandsWith(String option, CommandLine line) {
        return line.getSubcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(command -> command.findOption(option) != null)
                .map(CommandSpec::qualifiedName)
                .toList();
    }

    private static String didYouMean(List<String> near, String otherwise) {
        return near.isEmpty() ? ". " + otherwise + "." : ". Did you mean " + near.get(0) + "?";
    }

    private static String choices(CommandLine line) {
        List<String> names = List.copyOf(line.getSubcommands().keySet());
        return String.join(", ", names.subList(0, names.size() - 1)) + " or " + names.get(names.size() - 1);
    }

    private static String withValue(ArgSpec arg) {
        return arg instanceof OptionSpec option ? option.longestName() + " " + option.paramLabel() : name(arg);
    }

    private static String name(ArgSpec arg) {
        return arg instanceof OptionSpec option ? option.longestName() : ((PositionalParamSpec) arg).paramLabel();
    }
}
