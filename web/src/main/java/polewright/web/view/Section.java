package polewright.web.view;

import java.util.List;
import java.util.Optional;

/** A part of a page, from side to side. */
public sealed interface Section {
    /**
     * What to do, step by step, large.
     *
     * @param steps the first is the thing itself
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

    /** Sentences that guard against harm. */
    record Caution(List<String> lines) implements Section {
        public Caution {
            lines = List.copyOf(lines);
        }
    }

    /** An SVG document in the palette of the page. */
    record Drawing(String heading, String svg) implements Section {}

    /** What a command prints: a table keeps its columns. */
    record Printed(String heading, String text) implements Section {}

    /**
     * A table with a heading for each column; the first cell of a row is its heading.
     *
     * @param head of the columns, the first over the rows' headings
     */
    record Table(String heading, List<String> head, List<List<String>> rows) implements Section {
        public Table {
            head = List.copyOf(head);
            rows = List.copyOf(rows);
        }
    }

    /**
     * The newest frame, and what it told; moves as frames come.
     *
     * @param address where it is asked for again, alone
     * @param stream what tells that it is old; empty where the page around it is asked for again as a whole
     * @param steps what is left to do, large
     * @param settled to press when the screws are where they are to be
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

    /** Things that belong under one heading, each with a heading of its own, in order. */
    record Items(String heading, List<Item> items) implements Section {
        public Items {
            items = List.copyOf(items);
        }
    }

    /**
     * One of them.
     *
     * @param heading what it is; may be empty
     */
    record Item(String heading, List<Step> lines) {
        public Item {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A frame's light, with what is to be seen on it.
     *
     * @param light the address of its light
     * @param width points across, of light and overlay
     * @param overlay an SVG document to lie over it; empty if nothing is known of it
     * @param alt what it shows, for whoever does not see it
     * @param looks ways to look closer
     * @param left of the part that is shown, of the frame's width
     * @param top likewise, of its height
     * @param times how much narrower than the frame it is
     * @param tapTimes the same when a point of it is tapped; 0 where that leads nowhere
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
     * Says that the screws are where they are to be.
     *
     * @param action where it is posted
     * @param key the same on all devices
     * @param night the number of the night that the page knew of
     * @param ifLastIs the number of its last event
     */
    record Settled(String action, String key, long night, long ifLastIs) {}

    /**
     * A file to send.
     *
     * @param action where it is posted
     * @param key what it is sent under; sent again, nothing more is done
     * @param hint what is taken, and how large
     * @param accept what files are offered to choose from
     */
    record Upload(String heading, String action, String key, String label, String hint, String accept, String button)
            implements Section {}

    /** A form with its fields. */
    record Entry(FormView form) implements Section {}

    /** A form that needs nothing more: one big button. */
    record Done(FormView form) implements Section {}

    /**
     * Buttons that each do one thing at once.
     *
     * @param isPaired whether each two stand side by side: one way, and the other
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
     * Something to choose, which leads to a page and changes nothing.
     *
     * @param address where it leads
     * @param button what to press
     */
    record Choosing(String heading, String address, List<Select> selects, String button) implements Section {
        public Choosing {
            selects = List.copyOf(selects);
        }
    }

    /**
     * One of several.
     *
     * @param name what it is called in the address
     * @param label what it asks for
     */
    record Select(String name, String label, List<Choice> choices) {
        public Select {
            choices = List.copyOf(choices);
        }
    }

    /** One that can be chosen. */
    record Choice(String value, String label, boolean isChosen) {}

    /** Ways to go. */
    record Ways(String heading, List<Way> ways) implements Section {
        public Ways {
            ways = List.copyOf(ways);
        }
    }

    /**
     * A way to another page.
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
     * @param undo the form that takes it back; its key is empty where nothing can be taken back
     * @param correction where its form is, with what was entered; empty for what is not corrected by a form
     */
    record EventView(
            long seq, String at, String words, boolean isTakenBack, FormView undo, Optional<String> correction) {}
}
