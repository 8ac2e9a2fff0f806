package polewright.bench.frames;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a bench was asked for: {@code [--seed N [FILE] | --from N] [--count N]}.
 *
 * @param first seed
 * @param count of seeds
 * @param single whether one seed is to be described
 * @param file to write its frame to
 */
public record Options(long first, int count, boolean single, Optional<Path> file) {
    public static Options of(String[] args, int usualCount) {
        long first = 1;
        int count = usualCount;
        boolean single = false;
        Optional<Path> file = Optional.empty();
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--from" -> first = Long.parseLong(args[++i]);
                case "--count" -> count = Integer.parseInt(args[++i]);
                case "--seed" -> {
                    first = Long.parseLong(args[++i]);
                    single = true;
                }
                default -> file = Optional.of(Path.of(args[i]));
            }
        }
        return new Options(first, single ? 1 : count, single, file);
    }
}
