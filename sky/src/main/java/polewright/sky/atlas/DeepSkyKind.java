package polewright.sky.atlas;

/** The type of a deep-sky object. */
public enum DeepSkyKind {
    GALAXY("galaxy"),
    SPIRAL_GALAXY("spiral galaxy"),
    LENTICULAR_GALAXY("lenticular galaxy"),
    ELLIPTICAL_GALAXY("elliptical galaxy"),
    IRREGULAR_GALAXY("irregular galaxy"),
    DWARF_SPHEROIDAL_GALAXY("dwarf spheroidal galaxy"),
    GALAXY_CLUSTER("cluster of galaxies"),
    OPEN_CLUSTER("open cluster"),
    GLOBULAR_CLUSTER("globular cluster"),
    STAR_GROUP("group of stars"),
    PLANETARY_NEBULA("planetary nebula"),
    EMISSION_NEBULA("emission nebula"),
    REFLECTION_NEBULA("reflection nebula"),
    BRIGHT_NEBULA("bright nebula"),
    DARK_NEBULA("dark nebula"),
    STAR_FORMING_REGION("star-forming region"),
    SUPERNOVA_REMNANT("supernova remnant");

    private final String words;

    DeepSkyKind(String words) {
        this.words = words;
    }

    /** In plain words, e.g. {@code open cluster}. */
    public String words() {
        return words;
    }
}
