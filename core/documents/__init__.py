"""Documents and their files: TOML, records, drafts, signatures.

In: Paths and nested tables of plain TOML values.
Out: Documents, typed entries out of them, lists of records; one line for every fault.
"""
