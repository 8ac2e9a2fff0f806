package polewright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.input.WordInput;

@Command(
        name = "completion",
        description = {
            "Print a script for bash or zsh.",
            "With it, the Tab key completes commands, options, choices and file names."
        },
        footer = {
            "",
            "For example, for every new bash:",
            "  polewright completion bash > ~/.polewright.bash && echo '. ~/.polewright.bash' >> ~/.bashrc",
            "For every new zsh:",
            "  polewright completion zsh > ~/.polewright.zsh && echo '. ~/.polewright.zsh' >> ~/.zshrc"
        })
final class CompletionCommand implements Callable<Integer> {
    /** The shells in which the script is tested. */
    private enum Shell {
        BASH,
        ZSH
    }

    private static final class ShellInput implements ITypeConverter<Shell> {
        @Override
        public Shell convert(String typed) {
            return new WordInput<>(Shell.class).convert(typed);
        }
    }

    private final Workbench workbench;
    private final Supplier<CommandLine> commands;

    @Parameters(paramLabel = "SHELL", arity = "1", converter = ShellInput.class, description = "bash or zsh.")
    private Shell shell;

    /**
     * Makes the command.
     *
     * @param commands gives all commands of the program
     */
    CompletionCommand(Workbench workbench, Supplier<CommandLine> commands) {
        this.workbench = workbench;
        this.commands = commands;
    }

    @Override
    public Integer call() {
        workbench.out().print(script());
        workbench.out().flush();
        return 0;
    }

    private String script() {
        CommandLine all = commands.get();
        offerWords(all);
        String script = AutoComplete.bash(all.getCommandName(), all);
        return shell == Shell.ZSH ? withoutSettings(script) : script;
    }

    /** The script works without these two, which would change how zsh treats the user's own aliases. */
    private static String withoutSettings(String script) {
        return script.replace("  setopt COMPLETE_ALIASES\n", "").replace("  alias compopt=complete\n", "");
    }

    /**
     * Prepares each choice for the script: in lower case, as the help writes it, and with a placeholder of its own. The
     * script stores the words of an option under its placeholder, and several options of a command may share one.
     */
    private static void offerWords(CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        for (OptionSpec option : List.copyOf(spec.options())) {
            if (option.completionCandidates() != null) {
                spec.remove(option);
                spec.addOption(OptionSpec.builder(option)
                        .paramLabel(option.longestName())
                        .completionCandidates(words(option))
                        .build());
            }
        }
        for (PositionalParamSpec parameter : List.copyOf(spec.positionalParameters())) {
            if (parameter.completionCandidates() != null) {
                spec.remove(parameter);
                spec.addPositional(PositionalParamSpec.builder(parameter)
                        .completionCandidates(words(parameter))
                        .build());
            }
        }
        command.getSubcommands().values().forEach(CompletionCommand::offerWords);
    }

    private static Iterable<String> words(ArgSpec argument) {
        Class<?> type = argument.typeInfo().getAuxiliaryTypes()[0];
        return type.isEnum() ? WordInput.words((Enum<?>[]) type.getEnumConstants()) : argument.completionCandidates();
    }
}
