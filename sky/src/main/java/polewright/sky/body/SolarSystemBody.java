package polewright.sky.body;
/** Placeholder until the ephemeris branch lands. */
public enum SolarSystemBody implements SkyBody {
    SUN;

    @Override
    public String label() {
        return "the Sun";
    }
}
