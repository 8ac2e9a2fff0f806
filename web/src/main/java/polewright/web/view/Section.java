package polewright.web.view;

import java.util.List;
import java.util.Optional;

/** A part of a page, over its full width. */
public sealed interface Section {
    /**
     * What to do, step by step, in large type.
     *
     * @param steps the first is the action itself
     */
    record Steps(List<Step> steps) implements Section {
        public Steps {
            steps = List.copyOf(steps);
        }
    }

    /**
     * One step or reason.
     *
     * @param tag what kind it is, one word
     * @param text the sentence
     */
    record Step(String tag, String text) {}

    /** Sentences under a heading, which may be empty. */
    record Words(String heading, List<String> lines) implements Section {
        public Words {
            lines = List.copyOf(lines);
        }
    }

    /** Safety cautions. */
    record Caution(List<String> lines) implements Section {
        public Caution {
            lines = List.copyOf(lines);
        }
    }

    /** An SVG document in the page's palette. */
    record Drawing(String heading, String svg) implements Section {}

    /** The output of a command: a table keeps its columns. */
    record Printed(String heading, String text) implements Section {}

    /**
     * A table with column headings; the first cell of a row is the row's heading.
     *
     * @param head the column headings, beginning with that of the row headings
     */
    record Table(String heading, List<String> head, List<List<String>> rows) implements Section {
        public Table {
            head = List.copyOf(head);
            rows = List.copyOf(rows);
        }
    }

    /**
     * The newest frame and its result; updated as frames come.
     *
     * @param address where this section is reloaded by itself
     * @param stream the event stream that announces a change; empty if the page around it is reloaded as a whole
     * @param steps what is left to do, in large type
     * @param settled the button that confirms that the screws are where they should be
     */
    record Frames(
            String address,
            String stream,
            List<Step> steps,
            List<String> lines,
            Optional<Picture> picture,
            Optional<Settled> settled)
            implements Section {
        public Frames {
            steps = List.copyOf(steps);
            lines = List.copyOf(lines);
        }
    }

    /** Items under one heading, each with its own heading, in order. */
    record Items(String heading, List<Item> items) implements Section {
        public Items {
            items = List.copyOf(items);
        }
    }

    /**
     * One item.
     *
     * @param heading what it is; may be empty
     */
    record Item(String heading, List<Step> lines) {
        public Item {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A frame's image with an overlay.
     *
     * @param light the address of the image
     * @param width points across, of image and overlay
     * @param overlay an SVG document to lie over it; empty if nothing is known about the frame
     * @param alt a description, for people who cannot see it
     * @param looks links to enlarged views
     * @param left of the part that is shown, as a fraction of the frame's width
     * @param top of the part that is shown, as a fraction of the frame's height
     * @param times the magnification: the frame's width over the part's
     * @param tapTimes the magnification after a point of it is tapped; 0 if tapping does nothing
     */
    record Picture(
            String light,
            int width,
            int height,
            String overlay,
            String alt,
            List<Way> looks,
            double left,
            double top,
            int times,
            int tapTimes) {
        public Picture {
            looks = List.copyOf(looks);
        }
    }

    /**
     * The button that confirms that the screws are where they should be.
     *
     * @param action where it is posted
     * @param key the same on all devices
     * @param night the number of the night that the page knew of
     * @param ifLastIs the number of its last event
     */
    record Settled(String action, String key, long night, long ifLastIs) {}

    /**
     * A file to upload.
     *
     * @param action where it is posted
     * @param key its submission key; a repeated submission has no further effect
     * @param hint what is accepted, and how large
     * @param accept the file types offered to choose from
     */
    record Upload(String heading, String action, String key, String label, String hint, String accept, String button)
            implements Section {}

    /** A form with its fields. */
    record Entry(FormView form) implements Section {}

    /** A form that needs no entries: one big button. */
    record Done(FormView form) implements Section {}

    /**
     * Buttons that each act at once.
     *
     * @param isPaired whether the buttons are shown in pairs, one for each of two opposite directions
     */
    record Presses(String heading, List<Press> presses, boolean isPaired) implements Section {
        public Presses {
            presses = List.copyOf(presses);
        }

        public Presses(String heading, List<Press> presses) {
            this(heading, presses, false);
        }
    }

    /** A button. */
    record Press(String label, FormView form) {}

    /**
     * A choice that leads to a page and changes nothing.
     *
     * @param address where it leads
     * @param button the label of its button
     */
    record Choosing(String heading, String address, List<Select> selects, String button) implements Section {
        public Choosing {
            selects = List.copyOf(selects);
        }
    }

    /**
     * One drop-down list.
     *
     * @param name of the query parameter
     * @param label what it asks for
     */
    record Select(String name, String label, List<Choice> choices) {
        public Select {
            choices = List.copyOf(choices);
        }
    }

    /** An option of it. */
    record Choice(String value, String label, boolean isChosen) {}

    /** Links. */
    record Ways(String heading, List<Way> ways) implements Section {
        public Ways {
            ways = List.copyOf(ways);
        }

        /** Whether one of them is the thing to do now. */
        public boolean hasMain() {
            return ways.stream().anyMatch(Way::isMain);
        }
    }

    /**
     * A link to another page.
     *
     * @param isMain whether it is the thing to do now
     */
    record Way(String address, String label, boolean isMain) {}

    /** The events of a night, the newest first. */
    record Events(String heading, List<EventView> events) implements Section {
        public Events {
            events = List.copyOf(events);
        }
    }

    /**
     * An event in a list.
     *
     * @param at when, as the person reads a clock
     * @param isTakenBack whether it no longer counts
     * @param undo the form that takes it back; its key is empty if nothing can be taken back
     * @param correction the address of its form with the original entries; empty for an event that no form corrects
     */
    record EventView(
            long seq, String at, String words, boolean isTakenBack, FormView undo, Optional<String> correction) {}
}
