//! Arranges a module so that it packs smaller and runs as before.
//!
//! Brotli finds what stands there in the same bytes. Compilers number locals and functions as
//! they come, so that the same thing is written differently in each function. Here
//!
//! * the local that holds the stack pointer has the same number in nearly all functions, and of
//!   the others those used most have the smallest;
//! * hints of alignment, which engines pass over, are all the same;
//! * functions with the same locals and the same type stand together, the largest first.
//!
//! That is 4 % of the page's weight. The module is checked against the rules of WebAssembly
//! before it is given back.

use std::cmp::Reverse;
use std::convert::Infallible;
use wasm_encoder::reencode::{self, Reencode, utils};
use wasm_encoder::{CodeSection, Function, FunctionSection, Instruction, MemArg, Module, ValType};
use wasmparser::{FunctionBody, Operator, Parser, Payload, Validator};

/// The number of the local with the stack pointer, where no more parameters stand before it.
const STACK_POINTER: u32 = 10;

type Wrong = reencode::Error<Infallible>;

/// The same module, arranged.
///
/// # Errors
/// The bytes are no module, or (which would be an error here) what comes out is none.
pub fn arrange(module: &[u8]) -> Result<Vec<u8>, String> {
    let wrong = |error: &dyn std::fmt::Display| format!("the module cannot be arranged: {error}");
    let mut arranger = Arranger::read(module).map_err(|error| wrong(&error))?;
    let mut arranged = Module::new();
    arranger
        .parse_core_module(&mut arranged, Parser::new(0), module)
        .map_err(|error| wrong(&error))?;
    let arranged = arranged.finish();
    Validator::new()
        .validate_all(&arranged)
        .map_err(|error| wrong(&error))?;
    Ok(arranged)
}

/// What is known of a function before anything is written.
struct Known {
    of_type: u32,
    size: usize,
    locals: Locals,
}

/// The locals of a function as they will be.
#[derive(Default)]
struct Locals {
    /// How many of which type, in the order in which they are declared.
    declared: Vec<(u32, ValType)>,
    /// The new number of each; parameters keep theirs.
    numbers: Vec<u32>,
}

struct Arranger {
    /// How many functions come from outside.
    imported: u32,
    functions: Vec<Known>,
    /// The functions in their new order.
    order: Vec<usize>,
    /// The new place of each function.
    places: Vec<u32>,
    /// The numbers of the locals of the function that is being written.
    numbers: Vec<u32>,
}

impl Arranger {
    fn read(module: &[u8]) -> Result<Self, Wrong> {
        let mut parameters = Vec::new();
        let mut types = Vec::new();
        let mut imported = 0;
        let mut functions = Vec::new();
        for payload in Parser::new(0).parse_all(module) {
            match payload? {
                Payload::TypeSection(section) => {
                    for of_type in section.into_iter_err_on_gc_types() {
                        parameters.push(of_type?.params().len());
                    }
                }
                Payload::ImportSection(section) => {
                    for import in section.into_imports() {
                        imported += u32::from(matches!(import?.ty, wasmparser::TypeRef::Func(_)));
                    }
                }
                Payload::FunctionSection(section) => {
                    types = section.into_iter().collect::<Result<_, _>>()?;
                }
                Payload::CodeSectionEntry(body) => {
                    let of_type = types.get(functions.len()).copied().unwrap_or_default();
                    let parameters = parameters.get(of_type as usize).copied();
                    functions.push(Known {
                        of_type,
                        size: body.range().len(),
                        locals: Locals::of(&body, parameters.unwrap_or_default())?,
                    });
                }
                _ => {}
            }
        }
        let mut order: Vec<usize> = (0..functions.len()).collect();
        order.sort_by_cached_key(|&at| {
            let Known {
                of_type,
                size,
                locals: Locals { declared, .. },
            } = &functions[at];
            let kinds: Vec<u8> = declared.iter().map(|(_, kind)| rank(*kind)).collect();
            let counts: Vec<u32> = declared.iter().map(|(count, _)| *count).collect();
            (kinds, counts, *of_type, Reverse(*size))
        });
        let mut places = vec![0; functions.len()];
        for (place, &at) in (imported..).zip(&order) {
            places[at] = place;
        }
        Ok(Self {
            imported,
            functions,
            order,
            places,
            numbers: Vec::new(),
        })
    }
}

/// Types of locals in the order in which they are declared.
fn rank(kind: ValType) -> u8 {
    match kind {
        ValType::I32 => 0,
        ValType::I64 => 1,
        ValType::F32 => 2,
        ValType::F64 => 3,
        ValType::V128 => 4,
        ValType::Ref(_) => 5,
    }
}

impl Locals {
    fn of(body: &FunctionBody, parameters: usize) -> Result<Self, Wrong> {
        let mut kinds = Vec::new();
        for declared in body.get_locals_reader()? {
            let (count, kind) = declared?;
            let kind = reencode::RoundtripReencoder.val_type(kind)?;
            kinds.extend(std::iter::repeat_n(kind, count as usize));
        }
        let mut uses = vec![0_usize; parameters + kinds.len()];
        for operator in body.get_operators_reader()? {
            if let Operator::LocalGet { local_index }
            | Operator::LocalSet { local_index }
            | Operator::LocalTee { local_index } = operator?
                && let Some(uses) = uses.get_mut(local_index as usize)
            {
                *uses += 1;
            }
        }
        let stack_pointer = stack_pointer(body)?
            .map(|local| local as usize)
            .filter(|&local| {
                let kind = local.checked_sub(parameters).and_then(|at| kinds.get(at));
                kind == Some(&ValType::I32) && parameters <= STACK_POINTER as usize
            });
        // Types together, those used most first.
        let mut sorted: Vec<usize> = (parameters..uses.len())
            .filter(|local| Some(*local) != stack_pointer)
            .collect();
        sorted.sort_by_key(|&local| (rank(kinds[local - parameters]), Reverse(uses[local])));
        let (integers, others): (Vec<usize>, Vec<usize>) = sorted
            .into_iter()
            .partition(|local| kinds[local - parameters] == ValType::I32);
        let mut placed: Vec<Option<usize>> = integers.into_iter().map(Some).collect();
        if let Some(local) = stack_pointer {
            let at = STACK_POINTER as usize - parameters;
            // Integers that nobody uses, up to its place.
            placed.resize(placed.len().max(at), None);
            placed.insert(at, Some(local));
        }
        placed.extend(others.into_iter().map(Some));
        let mut numbers: Vec<u32> = (0..).take(uses.len()).collect();
        let mut declared: Vec<(u32, ValType)> = Vec::new();
        for (number, local) in (parameters as u32..).zip(placed) {
            let kind = local.map_or(ValType::I32, |local| kinds[local - parameters]);
            match declared.last_mut() {
                Some((count, last)) if *last == kind => *count += 1,
                _ => declared.push((1, kind)),
            }
            if let Some(local) = local {
                numbers[local] = number;
            }
        }
        Ok(Self { declared, numbers })
    }
}

/// The local that takes the stack pointer where a function makes room on the stack.
fn stack_pointer(body: &FunctionBody) -> Result<Option<u32>, Wrong> {
    let mut before = [None, None, None];
    for operator in body.get_operators_reader()?.into_iter().take(16) {
        let operator = operator?;
        if let (
            Operator::LocalTee { local_index } | Operator::LocalSet { local_index },
            [
                Some(Operator::GlobalGet { global_index: 0 }),
                Some(Operator::I32Const { .. }),
                Some(Operator::I32Sub),
            ],
        ) = (&operator, &before)
        {
            return Ok(Some(*local_index));
        }
        before.rotate_left(1);
        before[2] = Some(operator);
    }
    Ok(None)
}

impl Reencode for Arranger {
    type Error = Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Wrong> {
        let own = function.checked_sub(self.imported);
        let place = own.and_then(|own| self.places.get(own as usize));
        Ok(place.copied().unwrap_or(function))
    }

    fn parse_function_section(
        &mut self,
        section: &mut FunctionSection,
        _: wasmparser::FunctionSectionReader<'_>,
    ) -> Result<(), Wrong> {
        for &at in &self.order {
            section.function(self.functions[at].of_type);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        section: &mut CodeSection,
        bodies: wasmparser::CodeSectionReader<'_>,
    ) -> Result<(), Wrong> {
        let bodies: Vec<FunctionBody> = bodies.into_iter().collect::<Result<_, _>>()?;
        for at in self.order.clone() {
            let Locals { declared, numbers } = std::mem::take(&mut self.functions[at].locals);
            self.numbers = numbers;
            let mut function = Function::new(declared);
            let mut operators = bodies[at].get_operators_reader()?;
            while !operators.eof() {
                function.instruction(&self.parse_instruction(&mut operators)?);
            }
            section.function(&function);
        }
        Ok(())
    }

    /// What tools leave for other tools.
    fn parse_custom_section(
        &mut self,
        _: &mut Module,
        _: wasmparser::CustomSectionReader<'_>,
    ) -> Result<(), Wrong> {
        Ok(())
    }

    fn instruction<'a>(&mut self, operator: Operator<'a>) -> Result<Instruction<'a>, Wrong> {
        let number = |local: u32| self.numbers[local as usize];
        Ok(match operator {
            Operator::LocalGet { local_index } => Instruction::LocalGet(number(local_index)),
            Operator::LocalSet { local_index } => Instruction::LocalSet(number(local_index)),
            Operator::LocalTee { local_index } => Instruction::LocalTee(number(local_index)),
            other => utils::instruction(self, other)?,
        })
    }

    fn mem_arg(&mut self, argument: wasmparser::MemArg) -> Result<MemArg, Wrong> {
        let argument = utils::mem_arg(self, argument)?;
        Ok(MemArg {
            align: 0,
            ..argument
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{STACK_POINTER, arrange};
    use wasm_encoder::{
        CodeSection, ConstExpr, ExportKind, ExportSection, Function, FunctionSection,
        GlobalSection, GlobalType, MemArg, MemorySection, MemoryType, Module, TypeSection, ValType,
    };
    use wasmparser::{ExternalKind, Operator, Parser, Payload};

    /// Two functions on the stack, the first a small one without room on it.
    fn module() -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([ValType::I32], [ValType::I32]);
        types.ty().function([], [ValType::F64]);
        let mut functions = FunctionSection::new();
        functions.function(1).function(0).function(0);
        let mut memories = MemorySection::new();
        memories.memory(MemoryType {
            minimum: 1,
            maximum: None,
            memory64: false,
            shared: false,
            page_size_log2: None,
        });
        let mut globals = GlobalSection::new();
        let stack = GlobalType {
            val_type: ValType::I32,
            mutable: true,
            shared: false,
        };
        globals.global(stack, &ConstExpr::i32_const(1024));
        let mut exports = ExportSection::new();
        exports.export("third", ExportKind::Func, 0);
        exports.export("same", ExportKind::Func, 1);
        exports.export("twice", ExportKind::Func, 2);
        let mut code = CodeSection::new();
        // Two kinds of locals.
        let mut third = Function::new([(1, ValType::F64), (2, ValType::I32)]);
        third
            .instructions()
            .f64_const((1.0 / 3.0).into())
            .local_tee(0)
            .end();
        code.function(&third);
        // The stack pointer in the last local; the one before is used most.
        let at = MemArg {
            offset: 8,
            align: 2,
            memory_index: 0,
        };
        let mut same = Function::new([(3, ValType::I32), (1, ValType::F64)]);
        same.instructions()
            .global_get(0)
            .i32_const(16)
            .i32_sub()
            .local_tee(3)
            .local_get(0)
            .local_tee(2)
            .i32_store(at)
            .local_get(2)
            .local_set(2)
            .local_get(3)
            .i32_load(at)
            .end();
        code.function(&same);
        let mut twice = Function::new([(2, ValType::I32)]);
        twice
            .instructions()
            .local_get(0)
            .call(1)
            .local_tee(2)
            .local_get(2)
            .i32_add()
            .end();
        code.function(&twice);
        let mut module = Module::new();
        module
            .section(&types)
            .section(&functions)
            .section(&memories)
            .section(&globals)
            .section(&exports)
            .section(&code);
        module.finish()
    }

    /// The operators of each function, by the name under which it is exported.
    fn exported(module: &[u8]) -> Vec<(String, Vec<String>)> {
        let mut names = Vec::new();
        let mut bodies = Vec::new();
        for payload in Parser::new(0).parse_all(module) {
            match payload.expect("a module") {
                Payload::ExportSection(exports) => {
                    for export in exports {
                        let export = export.expect("an export");
                        assert_eq!(export.kind, ExternalKind::Func);
                        names.push((export.name.to_owned(), export.index as usize));
                    }
                }
                Payload::CodeSectionEntry(body) => {
                    let operators = body.get_operators_reader().expect("operators");
                    let said = |operator: Operator| match operator {
                        Operator::I32Load { memarg } | Operator::I32Store { memarg } => {
                            format!("memory at {}", memarg.offset)
                        }
                        other => format!("{other:?}"),
                    };
                    bodies.push(
                        operators
                            .into_iter()
                            .map(|operator| said(operator.expect("an operator")))
                            .collect::<Vec<_>>(),
                    );
                }
                _ => {}
            }
        }
        names
            .into_iter()
            .map(|(name, at)| (name, bodies[at].clone()))
            .collect()
    }

    #[test]
    fn a_module_does_the_same_with_other_numbers() {
        let before = exported(&module());
        let after = exported(&arrange(&module()).expect("arranged"));
        // Integers come first, whether they are used or not.
        assert_eq!(after[0].1[1], "LocalTee { local_index: 2 }");
        let (name, same) = &after[1];
        assert_eq!(name, "same");
        let sp = STACK_POINTER;
        assert_eq!(
            same[3..],
            [
                &format!("LocalTee {{ local_index: {sp} }}"),
                "LocalGet { local_index: 0 }",
                "LocalTee { local_index: 1 }",
                "memory at 8",
                "LocalGet { local_index: 1 }",
                "LocalSet { local_index: 1 }",
                &format!("LocalGet {{ local_index: {sp} }}"),
                "memory at 8",
                "End",
            ]
        );
        // Without locals that differ, "twice" comes before "same", and calls it where it is now.
        let called = |of: &[String]| of.iter().find(|each| each.starts_with("Call")).cloned();
        assert_eq!(
            called(&before[2].1).as_deref(),
            Some("Call { function_index: 1 }")
        );
        assert_ne!(called(&after[2].1), called(&before[2].1));
        assert!(
            after[2]
                .1
                .contains(&"LocalTee { local_index: 1 }".to_owned())
        );
    }

    #[test]
    fn arranging_twice_changes_nothing_more() {
        let once = arrange(&module()).expect("arranged");
        assert_eq!(arrange(&once).expect("arranged"), once);
    }

    #[test]
    fn what_is_no_module_is_refused() {
        let wrong = arrange(b"no module").expect_err("refused");
        assert!(
            wrong.starts_with("the module cannot be arranged:"),
            "{wrong}"
        );
    }
}
