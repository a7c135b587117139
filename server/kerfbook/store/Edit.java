package kerfbook.store;

import java.util.List;
import kerfbook.quantity.Require;

/** One change to a campaign. Where it replaces or removes it names the version it was made from. */
public sealed interface Edit {

    /** Kind and code of what is changed. */
    List<String> thing();

    /** Replaces the header; {@code name} is the copy of its name that lists show. */
    record PutHeader(String name, String json, long expectedVersion) implements Edit {
        public PutHeader {
            Require.name(name, "name");
            NewItem.body(json, "json");
        }

        @Override
        public List<String> thing() {
            return List.of(Parts.HEADER, "");
        }
    }

    /** Adds an item after all others. */
    record AddItem(NewItem item) implements Edit {
        public AddItem {
            Require.present(item, "item");
        }

        @Override
        public List<String> thing() {
            return List.of(item.kind(), item.code());
        }
    }

    /** Replaces an item where it stands. */
    record PutItem(NewItem item, long expectedVersion) implements Edit {
        public PutItem {
            Require.present(item, "item");
        }

        @Override
        public List<String> thing() {
            return List.of(item.kind(), item.code());
        }
    }

    record RemoveItem(String kind, String code, long expectedVersion) implements Edit {
        public RemoveItem {
            Require.code(kind, "kind");
            Require.code(code, "code");
        }

        @Override
        public List<String> thing() {
            return List.of(kind, code);
        }
    }
}
