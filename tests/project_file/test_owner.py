"""Whether the program that made a lock still runs."""

import os
import subprocess
import sys
from dataclasses import asdict, replace

import pytest

from configurator.project_file.owner import Owner, owner_from, this_program

on_linux = pytest.mark.skipif(sys.platform != "linux", reason="asks Linux about its processes")


def test_this_program_lives():
    assert this_program().lives() is True
    assert this_program().pid == os.getpid()


@on_linux
def test_one_that_ended_lives_no_more():
    process = subprocess.Popen([sys.executable, "-c", ""])
    process.wait()
    assert replace(this_program(), pid=process.pid).lives() is False


@on_linux
def test_a_later_process_of_the_same_number_is_another_one():
    here = this_program()
    assert replace(here, started=str(int(here.started) + 1)).lives() is False


def test_after_a_start_of_the_machine_nothing_lives():
    assert replace(this_program(), boot="before").lives() is False


@pytest.mark.parametrize(
    "change", [{"host": "elsewhere"}, {"machine": "elsewhere"}, {"space": "pid:[1]"}, {"started": ""}]
)
def test_of_what_cannot_be_asked_it_is_not_known(change):
    assert replace(this_program(), **change).lives() is None


@pytest.mark.parametrize("pid", [2**40, 2**70])
def test_a_number_that_no_process_has_is_no_process(pid):
    assert replace(this_program(), pid=pid).lives() is False


@pytest.mark.parametrize("pid", [0, -1])
def test_a_number_that_means_many_processes_is_not_known(pid):
    assert replace(this_program(), pid=pid).lives() is not True


def test_it_comes_back_from_a_file_and_nothing_else_does():
    here = this_program()
    assert owner_from(asdict(here)) == here
    for data in (None, [], {}, {"pid": 1}, asdict(here) | {"pid": "many"}, asdict(here) | {"user": 3}):
        assert owner_from(data) is None


def test_words_are_fit_to_be_shown():
    owner = Owner("ann\n\x1b[2J", "d" * 100, "", "", "", 1, "")
    assert owner.words() == f"ann[2J on {'d' * 60}"
    assert Owner("", "", "", "", "", 1, "").words() == "somebody on some machine"
