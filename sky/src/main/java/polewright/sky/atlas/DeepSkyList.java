package polewright.sky.atlas;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/** Deep-sky objects to about magnitude 14, found by designation or common name: {@code m31}, {@code NGC 224}. */
public final class DeepSkyList {
    private static final Set<String> KIND_WORDS = Set.of("Nebula", "Galaxy", "Cluster");

    private final List<DeepSkyObject> all;
    private final NameIndex<DeepSkyObject> byName = new NameIndex<>();

    private DeepSkyList(List<DeepSkyObject> all) {
        this.all = List.copyOf(all);
        for (DeepSkyObject object : this.all) {
            object.designations().forEach(designation -> byName.add(designation, object));
        }
        for (DeepSkyObject object : this.all) {
            object.names().forEach(name -> byName.add(name, object));
            object.designations().forEach(designation -> addWithCatalogueSpelled(designation, object));
        }
        for (DeepSkyObject object : this.all) {
            object.names().forEach(name -> addWithoutKind(name, object));
        }
    }

    private void addWithCatalogueSpelled(String designation, DeepSkyObject object) {
        if (designation.startsWith("M ")) {
            byName.add("Messier" + designation.substring(1), object);
        } else if (designation.startsWith("B ")) {
            byName.add("Barnard" + designation.substring(1), object);
        }
    }

    /** {@code Rosette} is enough for the Rosette Nebula; but {@code Orion} is more than its nebula. */
    private void addWithoutKind(String name, DeepSkyObject object) {
        int lastSpace = name.lastIndexOf(' ');
        if (lastSpace > 0 && KIND_WORDS.contains(name.substring(lastSpace + 1))) {
            String proper = name.substring(0, lastSpace);
            if (Constellations.bundled().all().stream().noneMatch(c -> c.name().equalsIgnoreCase(proper))) {
                byName.add(proper, object);
            }
        }
    }

    public static DeepSkyList bundled() {
        return Bundled.LIST;
    }

    private static final class Bundled {
        static final DeepSkyList LIST = new DeepSkyList(BundledTable.rows("deep-sky.tsv", 8).stream()
                .map(DeepSkyList::ofRow)
                .toList());
    }

    /** Built when the first name is misspelt: most runs never need it. */
    private static final class Spellings {
        static final List<NameIndex.Spelling> ALL =
                NameIndex.Spelling.allOf(bundled().all.stream().flatMap(object -> object.names().stream()));
    }

    private static DeepSkyObject ofRow(String[] row) {
        return new DeepSkyObject(
                BundledTable.list(row[0]),
                BundledTable.list(row[1]),
                DeepSkyKind.valueOf(row[2]),
                CatalogueStar.fixed(
                        Angle.ofDegrees(Double.parseDouble(row[3])), Angle.ofDegrees(Double.parseDouble(row[4]))),
                figure(row[5]),
                figure(row[6]),
                figure(row[7]));
    }

    private static OptionalDouble figure(String column) {
        return column.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(column));
    }

    /** All objects: Messier's in his order, then by catalogue and number. */
    public List<DeepSkyObject> all() {
        return all;
    }

    public Optional<DeepSkyObject> find(String name) {
        return byName.find(name);
    }

    /** Similarly spelled names, nearest first; empty when there are none. */
    public List<String> near(String name) {
        return NameIndex.near(name, Spellings.ALL);
    }

    /**
     * The object with a name.
     *
     * @throws InputRefused when there is none; the message lists similarly spelled names
     */
    public DeepSkyObject named(String name) {
        return find(name).orElseThrow(() -> {
            List<String> near = near(name);
            return new InputRefused(
                    "no deep-sky object is called '" + name.strip() + "'",
                    near.isEmpty()
                            ? "give a catalogue and number such as M 31, NGC 224 or IC 434"
                            : "did you mean " + String.join(", ", near)
                                    + "? If not, give a catalogue and number such as NGC 224");
        });
    }
}
