"""What stays with a joint through edits."""

from __future__ import annotations

from benchpack.ui.pages.joints.joint_book import RowKeys


def test_a_renamed_joint_keeps_its_key() -> None:
    keys = RowKeys()
    before = keys.of("Avocet 81", ("a", "b", "c"))
    after = keys.of("Avocet 81", ("a", "x", "c"))
    assert after.tolist() == before.tolist()


def test_the_same_names_give_the_same_array() -> None:
    keys = RowKeys()
    assert keys.of("Avocet 81", ("a",)) is keys.of("Avocet 81", ("a",))


def test_added_joints_get_keys_of_their_own_and_removed_ones_give_theirs_up() -> None:
    keys = RowKeys()
    first = keys.of("Avocet 81", ("a", "b", "c")).tolist()
    fewer = keys.of("Avocet 81", ("a", "c")).tolist()
    assert fewer == [first[0], first[2]]
    more = keys.of("Avocet 81", ("a", "c", "d")).tolist()
    assert more[:2] == fewer
    assert more[2] not in first


def test_two_names_that_change_places_take_their_keys_along() -> None:
    keys = RowKeys()
    first = keys.of("Avocet 81", ("a", "b")).tolist()
    assert keys.of("Avocet 81", ("b", "a")).tolist() == first[::-1]


def test_another_pack_has_other_keys() -> None:
    keys = RowKeys()
    first = set(keys.of("Avocet 81", ("a", "b")).tolist())
    assert not first & set(keys.of("Dunlin 74", ("a", "b")).tolist())
