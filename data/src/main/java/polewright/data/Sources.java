package polewright.data;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import polewright.sky.InputRefused;

/**
 * Input and output paths of the builders. Each is given as {@code name=path}; the default is where the Debian package
 * installs it, or where {@code npm pack} and {@code tar} leave it in the current folder.
 *
 * @param tycho folders with the Tycho-2 index files
 * @param motions the list of bright stars with motion
 * @param celestial the folder {@code data} of the package of Hipparcos positions, names and deep-sky lists
 * @param borders the script that contains the table of constellation borders
 * @param out the folder that the tables are written to
 */
record Sources(List<Path> tycho, Path motions, Path celestial, Path borders, Path out) {
    static Sources of(String... arguments) {
        Map<String, String> given = new LinkedHashMap<>();
        given.put("tycho", "/usr/share/astrometry");
        given.put("motions", "/usr/share/libswe/ephe/sefstars.txt");
        given.put("celestial", "d3-celestial/package/data");
        given.put("borders", "astronomy-engine/package/astronomy.js");
        given.put("out", "sky/src/main/resources/polewright/sky/atlas");
        for (String argument : arguments) {
            int equals = argument.indexOf('=');
            String name = equals < 0 ? argument : argument.substring(0, equals);
            if (equals < 0 || !given.containsKey(name)) {
                throw new InputRefused(
                        "'" + argument + "' is not a source",
                        "give name=path, the name one of " + String.join(", ", given.keySet()));
            }
            given.put(name, argument.substring(equals + 1));
        }
        List<Path> tycho = new ArrayList<>();
        for (String folder : given.getOrDefault("tycho", "").split(":", -1)) {
            tycho.add(Path.of(folder));
        }
        return new Sources(
                Collections.unmodifiableList(tycho),
                Path.of(given.getOrDefault("motions", "")),
                Path.of(given.getOrDefault("celestial", "")),
                Path.of(given.getOrDefault("borders", "")),
                Path.of(given.getOrDefault("out", "")));
    }

    /** The path if it exists. */
    static Path existing(Path path, String debianOrNpmPackage) {
        if (!Files.exists(path)) {
            throw new InputRefused(
                    path + " does not exist",
                    "fetch and unpack the package " + debianOrNpmPackage + ", then give its path as an argument");
        }
        return path;
    }
}
