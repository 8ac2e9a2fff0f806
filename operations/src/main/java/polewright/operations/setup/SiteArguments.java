package polewright.operations.setup;

import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.input.SiteInput;
import polewright.sky.place.Site;

/** The site as it is typed. */
public final class SiteArguments {
    public static final Argument<Site> SITE = Argument.option(
            "site",
            "Site: latitude, longitude, height",
            "54.60,-2.90,240: degrees, north and east positive; metres.",
            new Words<>("LAT,LON[,HEIGHT]", new SiteInput()::convert));

    private SiteArguments() {}
}
