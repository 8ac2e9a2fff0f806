package polewright.bench.independent;

import java.util.Locale;

/**
 * Visual nights with a simulator that shares no geometry with the code under test: {@code bench/independent STUDY}.
 */
public final class Independent {
    private Independent() {}

    public static void main(String[] args) {
        StudyOptions options = StudyOptions.of(args);
        long began = System.nanoTime();
        int status = switch (options.study()) {
            case screws -> ScrewsStudy.run(options);
            case mistakes -> MistakesStudy.run(options);
            case honest -> HonestStudy.run(options);
            case scatter -> ScatterStudy.run(options);
        };
        System.out.printf(Locale.ROOT, "%nplayed in %.0f s%n", (System.nanoTime() - began) / 1e9);
        System.exit(status);
    }
}
