package polewright.alignment.work;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import polewright.sky.InputRefused;

/**
 * What tonight is for.
 *
 * @param items at least one, each with a unique name
 */
public record Work(List<WorkItem> items) {
    private static final int MOST_ITEMS = 50;

    public Work {
        items = List.copyOf(items);
        if (items.isEmpty() || items.size() > MOST_ITEMS) {
            throw new InputRefused(
                    "a night's work of " + items.size() + " items is outside 1 to " + MOST_ITEMS,
                    "give at least one look or shot");
        }
        Set<String> names = new HashSet<>();
        for (WorkItem item : items) {
            if (!names.add(item.name().toLowerCase(Locale.ROOT))) {
                throw new InputRefused(
                        "two items of the work are called '" + item.name() + "'", "give each its own name");
            }
        }
    }
}
