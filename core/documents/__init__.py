"""The files that are kept: TOML read and written, records, drafts, signatures.

In: Paths and nested tables of plain TOML values.
Out: Documents, typed entries out of them, lists of records; one clear line for every fault.
"""
