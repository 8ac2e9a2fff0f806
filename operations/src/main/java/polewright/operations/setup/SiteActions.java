package polewright.operations.setup;

import java.util.List;
import java.util.Optional;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Entries;
import polewright.operations.action.EntryNotice;
import polewright.operations.action.Unit;
import polewright.session.DoubtfulSite;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Corrects tonight's site. */
public final class SiteActions {
    public static final Argument<Site> SITE = SiteArguments.SITE;
    private static final Argument<Boolean> OTHER_LATITUDE =
            Argument.option("other-latitude", "The latitude has the wrong sign", "", new Tick());
    private static final Argument<Boolean> OTHER_LONGITUDE =
            Argument.option("other-longitude", "The longitude has the wrong sign", "", new Tick());
    private static final Argument<Boolean> SWAPPED =
            Argument.option("swapped", "Latitude and longitude were swapped", "", new Tick());
    private static final Argument<Double> HEIGHT = Argument.option(
                    "height", "Only the height", "", Figure.signed(Unit.METRES))
            .seldom();

    public static final Action CORRECT_SITE = Action.of(
                    "correct-site",
                    List.of("site", "correct"),
                    "Correct the site",
                    "The whole night is recomputed; nothing that was logged is lost.",
                    SiteActions::corrected)
            .taking(SITE, OTHER_LATITUDE, OTHER_LONGITUDE, SWAPPED, HEIGHT)
            .checkedBy(SiteActions::notices)
            .sentBy("Correct the site")
            .forExample("", "--site 54.60,-2.90,240")
            .forExample("", "--other-longitude");

    private SiteActions() {}

    private static List<NightEvent> corrected(Entries entries, ActionContext context) {
        boolean isPartGiven = entries.given(HEIGHT).isPresent()
                || entries.isTicked(OTHER_LATITUDE)
                || entries.isTicked(OTHER_LONGITUDE)
                || entries.isTicked(SWAPPED);
        boolean isWholeGiven = entries.given(SITE).isPresent();
        if (isWholeGiven && isPartGiven) {
            throw new InputRefused("a whole site and part of one cannot be combined", "give {site} alone");
        }
        if (!isWholeGiven && !isPartGiven) {
            throw new InputRefused(
                    "the site is missing",
                    "give {site} as latitude, longitude and height (degrees, north and east positive; metres)");
        }
        Site corrected = site(entries, context.begun().site());
        if (corrected.equals(context.begun().site())) {
            throw new InputRefused("the site already has these values", "give the correct site");
        }
        return List.of(new Correction.SiteCorrected(corrected));
    }

    private static Site site(Entries entries, Site entered) {
        Optional<Site> whole = entries.given(SITE);
        if (whole.isPresent()) {
            return whole.get();
        }
        boolean isSwapped = entries.isTicked(SWAPPED);
        Angle latitude = isSwapped ? entered.longitude() : entered.latitude();
        Angle longitude = isSwapped ? entered.latitude() : entered.longitude();
        return new Site(
                entries.isTicked(OTHER_LATITUDE) ? latitude.negated() : latitude,
                entries.isTicked(OTHER_LONGITUDE) ? longitude.negated() : longitude,
                entries.given(HEIGHT).orElse(entered.heightMetres()));
    }

    private static List<EntryNotice> notices(Entries entries, ActionContext context) {
        Site corrected = site(entries, context.begun().site());
        return DoubtfulSite.of(corrected, context.zone(), context.now(), Optional.empty()).stream()
                .filter(DoubtfulSite::isOddAnywhere)
                .<EntryNotice>map(odd -> new EntryNotice.OddSite(odd, context.zone()))
                .toList();
    }
}
