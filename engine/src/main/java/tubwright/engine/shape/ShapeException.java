// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * Impossible geometry, said in the designer's words. Carries what the trouble is about, so that a reader of a design
 * document can point at the place in the file.
 */
public final class ShapeException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** What kind of thing is at fault. */
    public enum Subject {
        /** A frame; {@link #name()} is empty, {@link #index()} is its place in the list, from 0. */
        FRAME,
        /** The list of strips. */
        STRIPS,
        /** An opening, by name. */
        OPENING,
        /** A wall, by name. */
        WALL,
        /** A hole in a wall: name is {@code wall/hole}. */
        HOLE,
        /** A point that should lie on the tub. */
        SPOT,
        /** A zone of the layout, by name. */
        ZONE,
        /** A patch of the layout, by name. */
        PATCH,
        /** A piece of the layout, by name. */
        PIECE,
        /** The mesh settings. */
        SETTINGS
    }

    private final Subject subject;
    private final String name;
    private final int index;
    private final int corner;

    private ShapeException(Subject subject, String name, int index, int corner, String message) {
        super(message);
        this.subject = subject;
        this.name = name;
        this.index = index;
        this.corner = corner;
    }

    /** Trouble with the named thing. */
    public static ShapeException about(Subject subject, String name, String message) {
        return new ShapeException(subject, name, -1, -1, message);
    }

    /** Trouble with the frame at a place in the list, counted from 0. */
    public static ShapeException frame(int index, String message) {
        return new ShapeException(Subject.FRAME, "", index, -1, message);
    }

    /** Trouble with one corner of the frame at a place in the list, both counted from 0. */
    public static ShapeException corner(int index, int corner, String message) {
        return new ShapeException(Subject.FRAME, "", index, corner, message);
    }

    /** What kind of thing is at fault. */
    public Subject subject() {
        return subject;
    }

    /** Name of the opening, wall, zone, patch or piece; empty for frames and strips. */
    public String name() {
        return name;
    }

    /** Place of the frame in the list, from 0; -1 where it is not about a frame. */
    public int index() {
        return index;
    }

    /** Corner of the outline, from 0 at the bottom centre; -1 where it is not about one corner. */
    public int corner() {
        return corner;
    }
}
