"""What users install is what stands in the source tree."""

import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).parent.parent
SOURCE = ROOT / "src"


def test_the_wheel_holds_every_file_of_the_package(tmp_path: Path) -> None:
    """Modules, data files and the typing marker are all in the wheel, and nothing else of ours is."""
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path)]
    subprocess.run(build, cwd=ROOT, check=True, capture_output=True, timeout=60)
    (wheel,) = tmp_path.glob("*.whl")
    packed = {name for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    files = {file.relative_to(SOURCE).as_posix() for file in SOURCE.rglob("*") if file.is_file()}
    assert packed == {name for name in files if "__pycache__" not in name}
    assert "planeproof/py.typed" in packed
