"""A skirt that hangs around something: rules shared by every foot that is located by one."""
