package polewright.launcher.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import polewright.launcher.GeneratedFile;

/**
 * The picture of the modules in docs/design.md is drawn from the build: an arrow for each dependency that does not follow
 * from others. Run with {@code -Dpolewright.draw=true} to draw it again.
 */
class ModulePictureTest {
    private static final Path ROOT = Path.of("..");
    private static final Path PICTURE = ROOT.resolve("docs/pictures/modules.svg");
    private static final Pattern MODULE = Pattern.compile("<module>(\\w+)</module>");
    private static final Pattern DEPENDENCY =
            Pattern.compile("<groupId>polewright</groupId><artifactId>(\\w+)</artifactId>");
    private static final Set<String> NOT_SHIPPED = Set.of("data", "bench", "fuzz", "website");

    private static final int BOX_WIDTH = 110;
    private static final int BOX_HEIGHT = 34;
    private static final int COLUMN = 150;
    private static final int ROW = 78;
    private static final int MARGIN = 20;

    @Test
    void picture_isWhatTheBuildSays() throws IOException {
        GeneratedFile.assertIsCurrent(PICTURE, drawn());
    }

    @Test
    void dependencyThatFollowsFromOthers_isNotDrawn() {
        Map<String, Set<String>> uses =
                Map.of("sky", Set.of(), "mount", Set.of("sky"), "alignment", Set.of("mount", "sky"));
        assertThat(direct("alignment", uses)).containsExactly("mount");
    }

    private static String drawn() throws IOException {
        Map<String, Set<String>> uses = uses();
        Map<Integer, List<String>> rows = new TreeMap<>();
        uses.keySet()
                .forEach(module -> rows.computeIfAbsent(level(module, uses), row -> new ArrayList<>())
                        .add(module));
        // What is used over several rows goes to the right, where its arrow passes next to the other boxes.
        rows.values().forEach(row -> row.sort(Comparator.comparing(module -> isUsedFromAfar(module, uses))));
        int widest = rows.values().stream().mapToInt(List::size).max().orElse(1);
        Map<String, double[]> places = new LinkedHashMap<>();
        rows.forEach((row, modules) -> {
            double left = MARGIN + (widest - modules.size()) * COLUMN / 2.0;
            for (int i = 0; i < modules.size(); i++) {
                places.put(
                        modules.get(i),
                        new double[] {left + i * COLUMN + BOX_WIDTH / 2.0, MARGIN + row * (double) ROW});
            }
        });
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"14\">%n",
                3 * MARGIN + (widest - 1) * COLUMN + BOX_WIDTH,
                2 * MARGIN + (rows.size() - 1) * ROW + BOX_HEIGHT));
        svg.append("<title>The modules of Polewright: each arrow points to a module that is used</title>\n");
        svg.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        svg.append(
                "<defs><marker id=\"tip\" viewBox=\"0 0 8 8\" refX=\"8\" refY=\"4\" markerWidth=\"8\" markerHeight=\"8\""
                        + " orient=\"auto\"><path d=\"M0 0L8 4L0 8Z\" fill=\"#555555\"/></marker></defs>\n");
        double right = MARGIN + (widest - 1) * (double) COLUMN + BOX_WIDTH + MARGIN;
        uses.keySet()
                .forEach(module -> direct(module, uses).forEach(used -> {
                    if (isFar(module, used, uses)) {
                        arrowAround(svg, places.get(module), places.get(used), right);
                    } else {
                        arrow(svg, places.get(module), places.get(used));
                    }
                }));
        places.forEach((module, place) -> svg.append(String.format(
                Locale.ROOT,
                "<rect x=\"%.0f\" y=\"%.0f\" width=\"%d\" height=\"%d\" rx=\"5\" fill=\"#eef2f5\" stroke=\"#33475b\"/>"
                        + "<text x=\"%.0f\" y=\"%.0f\" text-anchor=\"middle\" fill=\"#1b2733\">%s</text>%n",
                place[0] - BOX_WIDTH / 2.0,
                place[1],
                BOX_WIDTH,
                BOX_HEIGHT,
                place[0],
                place[1] + BOX_HEIGHT / 2.0 + 5,
                module)));
        return svg.append("</svg>\n").toString().replace("\r\n", "\n");
    }

    private static void arrow(StringBuilder svg, double[] from, double[] to) {
        svg.append(String.format(
                Locale.ROOT,
                "<line x1=\"%.0f\" y1=\"%.0f\" x2=\"%.0f\" y2=\"%.0f\" stroke=\"#555555\" marker-end=\"url(#tip)\"/>%n",
                from[0],
                from[1],
                to[0],
                to[1] + BOX_HEIGHT));
    }

    private static void arrowAround(StringBuilder svg, double[] from, double[] to, double x) {
        svg.append(String.format(
                Locale.ROOT,
                "<path d=\"M%.0f %.0fH%.0fV%.0fH%.0f\" fill=\"none\" stroke=\"#555555\" marker-end=\"url(#tip)\"/>%n",
                from[0] + BOX_WIDTH / 2.0,
                from[1] + BOX_HEIGHT / 2.0,
                x,
                to[1] + BOX_HEIGHT / 2.0,
                to[0] + BOX_WIDTH / 2.0));
    }

    private static boolean isUsedFromAfar(String module, Map<String, Set<String>> uses) {
        return uses.keySet().stream()
                .anyMatch(user -> direct(user, uses).contains(module) && isFar(user, module, uses));
    }

    private static boolean isFar(String from, String to, Map<String, Set<String>> uses) {
        return level(from, uses) - level(to, uses) > 1;
    }

    /** How many modules lie below on the longest way down. */
    private static int level(String module, Map<String, Set<String>> uses) {
        return uses.get(module).stream()
                .mapToInt(used -> level(used, uses) + 1)
                .max()
                .orElse(0);
    }

    private static Set<String> direct(String module, Map<String, Set<String>> uses) {
        Set<String> direct = new TreeSet<>(uses.get(module));
        uses.get(module).forEach(used -> direct.removeAll(below(used, uses)));
        return direct;
    }

    private static Set<String> below(String module, Map<String, Set<String>> uses) {
        Set<String> below = new TreeSet<>(uses.get(module));
        uses.get(module).forEach(used -> below.addAll(below(used, uses)));
        return below;
    }

    /** The shipped modules in the order of the build, with the modules that each depends on. */
    private static Map<String, Set<String>> uses() throws IOException {
        Map<String, Set<String>> uses = new LinkedHashMap<>();
        Matcher modules = MODULE.matcher(Files.readString(ROOT.resolve("pom.xml")));
        while (modules.find()) {
            if (NOT_SHIPPED.contains(modules.group(1))) {
                continue;
            }
            Set<String> used = new TreeSet<>();
            Matcher dependencies = DEPENDENCY.matcher(
                    Files.readString(ROOT.resolve(modules.group(1)).resolve("pom.xml")));
            while (dependencies.find()) {
                used.add(dependencies.group(1));
            }
            uses.put(modules.group(1), used);
        }
        return uses;
    }
}
